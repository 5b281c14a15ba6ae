import { For, Show } from 'solid-js';
import { callerFields, callerMost } from '../../visit/job.ts';
import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** Who calls. Nothing of it leaves the tab but in the job that the staff copies. */
export function CallerCard(props: DeskProps) {
  const t = sayer(props);
  const value = (field: (typeof callerFields)[number]) => props.desk.caller.caller()[field] ?? '';
  return (
    <section class="panel caller">
      <h2>
        {t('desk:caller.title')} <Key of={letters.caller} />
      </h2>
      <p class="quiet" id="desk-private">
        {t(props.page.keepCaller === 'tab' ? 'desk:caller.privateKept' : 'desk:caller.private')}
      </p>
      <div class="fields">
        <For each={callerFields}>
          {(field) => (
            <p class={`field ${field}`}>
              <label for={`desk-${field}`}>{t(`job:lines.${field}`)}</label>
              <Show
                when={field === 'remark'}
                fallback={
                  <input
                    id={`desk-${field}`}
                    type={field === 'phone' ? 'tel' : 'text'}
                    autocomplete="off"
                    spellcheck={false}
                    maxlength={callerMost[field]}
                    value={value(field)}
                    onInput={({ currentTarget }) =>
                      props.desk.caller.set(field, currentTarget.value)
                    }
                  />
                }
              >
                <textarea
                  id={`desk-${field}`}
                  rows="3"
                  maxlength={callerMost[field]}
                  value={value(field)}
                  onInput={({ currentTarget }) => props.desk.caller.set(field, currentTarget.value)}
                />
              </Show>
            </p>
          )}
        </For>
      </div>
      <button type="button" class="plain" onClick={() => props.desk.clearCaller()}>
        <Key of={letters.clear} /> {t('desk:caller.clear')}
      </button>
    </section>
  );
}
