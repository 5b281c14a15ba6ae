import { Show } from 'solid-js';
import { Key } from './Key.tsx';
import { AloudLines } from './Aloud.tsx';
import { cautionsOf, deskNodeOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** Cautions to read out, with their signal word (ANSI Z535.4), ticked when they have been read. */
export function CautionBox(props: DeskProps) {
  const t = sayer(props);
  const node = () => props.desk.journey.node();
  const signal = () => deskNodeOf(props.page, node()).caution ?? 'warning';
  const isRead = () => props.desk.journey.isRead(node());
  const title = () => (node().answers.length > 0 ? 'desk:say.care' : 'desk:end.never');
  return (
    <Show when={cautionsOf(props.page.words, props.desk.guide, node()).length > 0}>
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
          <AloudLines {...props} of="care" />
          <AloudLines {...props} of="never" />
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
