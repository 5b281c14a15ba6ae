import { For } from 'solid-js';
import { Aloud } from './Aloud.tsx';
import { Key } from './Key.tsx';
import { choicesOf, UNSURE } from './nodes.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** The answers, each with its key; "does not know" is always there, on 0. */
export function Choices(props: DeskProps) {
  const t = sayer(props);
  const node = () => props.desk.journey.node();
  const waits = () => props.desk.journey.mustRead();
  return (
    <ul class="choices" aria-label={t('desk:say.answers')}>
      <For each={choicesOf(node())}>
        {({ edge, key }) => (
          <li classList={{ unsure: edge.id === UNSURE }}>
            <button
              type="button"
              aria-disabled={waits() ? 'true' : undefined}
              aria-describedby={waits() ? 'desk-status' : undefined}
              classList={{ present: props.desk.journey.present() === edge.id }}
              onClick={() => props.desk.choose(edge.id)}
            >
              <Key of={key} />
              <span>
                <Aloud {...props} part={{ answer: edge.id }} />
                {props.desk.journey.present() === edge.id && <small>{t('desk:say.now')}</small>}
              </span>
            </button>
          </li>
        )}
      </For>
    </ul>
  );
}
