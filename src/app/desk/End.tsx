import { For, Show, createMemo } from 'solid-js';
import { nodeWords } from '../shared/content-words.ts';
import { Aloud, AloudLines } from './Aloud.tsx';
import { CautionBox } from './Care.tsx';
import { deskNodeOf } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** A stop or a finish: in an emergency what to say first and the number, then what to tell the caller. */
export function End(props: DeskProps) {
  const t = sayer(props);
  const node = () => props.desk.journey.node();
  const say = createMemo(() => nodeWords(props.page.words, props.desk.guide, node()));
  const emergency = () => node().urgency === 'emergency';
  const calls = () => props.page.calls[node().id] ?? [];
  const caller = () => props.desk.caller.caller();
  const kicker = () => {
    if (emergency()) return 'desk:end.emergency';
    return node().kind === 'stop' ? 'desk:end.stop' : 'desk:end.finish';
  };
  return (
    <section class={`ask end ${node().kind} ${node().urgency}`}>
      <p class="kicker">
        <strong>{t(kicker())}</strong>
      </p>
      <h2 class="aloud" id="desk-say" tabindex="-1">
        <Aloud {...props} part="title" />
      </h2>
      <Show when={emergency() && !(caller().address && caller().phone)}>
        <p class="strong">{t('desk:end.addressFirst')}</p>
      </Show>
      <Show when={say().callNote}>
        <p class="call-note">
          <Aloud {...props} part="callNote" />
        </p>
      </Show>
      <Show when={calls().length > 0}>
        <h3 class="kicker to-call">{t(emergency() ? 'desk:end.number' : 'desk:end.calls')}</h3>
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
      <div class="do-and-not">
        <div>
          <h3 class="kicker">
            {t(node().kind === 'stop' && !emergency() ? 'desk:end.until' : 'desk:end.after')}
          </h3>
          <ol class="aloud-more">
            <AloudLines {...props} of="now" />
            <AloudLines {...props} of="lines" />
          </ol>
          <Show when={deskNodeOf(props.page, node()).breakerStaysOff}>
            <p class="strong">{t('site:end.breakerOff')}</p>
          </Show>
        </div>
        <CautionBox {...props} />
      </div>
      <Show when={emergency()}>
        <p class="quiet">{t('desk:end.can')}</p>
      </Show>
    </section>
  );
}
