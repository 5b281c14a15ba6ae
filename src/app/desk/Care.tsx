import { For, Show } from 'solid-js';
import type { GraphNode } from '../../guide/types.ts';
import { Key } from './Key.tsx';
import { nodeWords } from '../shared/content-words.ts';
import { Aloud } from './Aloud.tsx';
import { deskNodeOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** Cautions to read out, with their signal word (ANSI Z535.4), ticked when they have been read. */
export function CautionBox(props: DeskProps & { readonly node: GraphNode }) {
  const t = sayer(props);
  const lines = () => {
    const words = nodeWords(props.page.words, props.desk.guide, props.node);
    return (['care', 'never'] as const).flatMap((part) =>
      words[part].map((_, i) => [part, i] as const),
    );
  };
  const signal = () => deskNodeOf(props.page, props.node).caution ?? 'warning';
  const isRead = () => props.desk.journey.isRead(props.node);
  const title = () => (props.node.answers.length > 0 ? 'desk:say.care' : 'desk:end.never');
  return (
    <Show when={lines().length > 0}>
      <section class={`care ${signal()}`} classList={{ read: isRead() }}>
        <h3>
          <Show when={signal() !== 'notice'}>
            <span class="alert" aria-hidden="true">
              !
            </span>
          </Show>
          <span class="word">{t(`site:signals.${signal()}`)}</span>
          <span class="of">{t(title())}</span>
        </h3>
        <ul>
          <For each={lines()}>
            {(part) => (
              <li>
                <Aloud page={props.page} desk={props.desk} part={part} />
              </li>
            )}
          </For>
        </ul>
        <Show
          when={isRead()}
          fallback={
            <button type="button" class="tick" onClick={() => props.desk.tick()}>
              <Key of={t('desk:keys.space')} /> {t('desk:say.read')}
            </button>
          }
        >
          <p class="ticked">{t('desk:say.isRead')}</p>
        </Show>
      </section>
    </Show>
  );
}
