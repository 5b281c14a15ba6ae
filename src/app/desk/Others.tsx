import { For, Show } from 'solid-js';
import { guideName } from '../shared/content-words.ts';
import { sayer } from '../shared/words.ts';
import type { OtherCalls } from './Choose.tsx';
import { Key } from './Key.tsx';
import type { CallRecord } from './calls.ts';
import { letters } from './keys.ts';
import type { Shell } from './page.ts';

/** The tab's other calls: on hold, or over; each can be taken back whole. */
export function Others(props: { readonly page: Shell; readonly calls: OtherCalls }) {
  const t = sayer(props);
  const who = ({ caller, guide }: CallRecord): string =>
    caller.name ?? caller.phone ?? (guide === undefined ? '' : guideName(props.page.words, guide));
  const how = ({ held, copied }: CallRecord) => {
    if (held) return 'desk:calls.held';
    return copied === undefined ? 'desk:calls.uncopied' : 'desk:calls.over';
  };
  return (
    <Show when={props.calls.list().length > 0}>
      <section class="panel calls">
        <h2>
          {t('desk:calls.title')} <Key of={letters.calls} />
        </h2>
        <ul class="choices">
          <For each={props.calls.list()}>
            {(call, index) => (
              <li>
                <button
                  type="button"
                  id={index() === 0 ? 'desk-calls' : undefined}
                  onClick={() => props.calls.take(call.id)}
                >
                  <span>
                    {who(call)} <small>{call.at}</small>
                    <small>{t(how(call))}</small>
                  </span>
                </button>
              </li>
            )}
          </For>
        </ul>
      </section>
    </Show>
  );
}
