import { For, Show } from 'solid-js';
import { titleOf } from '../note/sentences.ts';
import { Care } from './Care.tsx';
import { carriedOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** A stop or a finish: in an emergency what to say first and the number, then what to tell the caller. */
export function End(props: DeskProps) {
  const t = sayer(props);
  const words = () => props.page.words;
  const node = () => props.desk.node();
  const key = () => `${props.desk.guide.id}:${node().sentences}`;
  const emergency = () => node().urgency === 'emergency';
  const calls = () => props.page.calls[node().id] ?? [];
  const lines = () => [...words().some(`${key()}.now`), ...words().some(`${key()}.lines`)];
  const kicker = () => (emergency() ? 'end.emergency' : `end.${node().kind}`);
  return (
    <section class={`ask end ${node().kind} ${node().urgency}`}>
      <p class="kicker">
        <strong>{t(kicker())}</strong>
      </p>
      <h2 class="aloud" id="desk-say" tabindex="-1">
        {titleOf(words(), props.desk.guide, node())}
      </h2>
      <Show when={words().has(`${key()}.callNote`)}>
        <p class="call-note">{words().t(`${key()}.callNote`)}</p>
      </Show>
      <Show when={calls().length > 0}>
        <h3 class="kicker">{t(emergency() ? 'end.number' : 'end.calls')}</h3>
        <ol class="numbers">
          <For each={calls()}>
            {(call) => (
              <li>
                <span>{call.label}</span> <strong>{call.show}</strong>
              </li>
            )}
          </For>
        </ol>
      </Show>
      <h3 class="kicker">{t(node().kind === 'stop' ? 'end.until' : 'end.after')}</h3>
      <ol class="aloud-more">
        <For each={lines()}>{(line) => <li>{line}</li>}</For>
      </ol>
      <Show when={carriedOf(props.page, node()).breakerStaysOff}>
        <p class="strong">{t('site:end.breakerOff')}</p>
      </Show>
      <Care page={props.page} desk={props.desk} node={node()} />
      <Show when={emergency()}>
        <p class="quiet">{t('end.can')}</p>
      </Show>
    </section>
  );
}
