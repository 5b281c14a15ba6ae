import { For, Show } from 'solid-js';
import { callerFields, callerMost, type CallerField } from '../../visit/job.ts';
import { Key, KeyButton } from './Key.tsx';
import type { CallerState } from './caller.ts';
import { letters } from './keys.ts';
import type { Shell } from './page.ts';
import { sayer } from '../shared/words.ts';

interface Props {
  readonly page: Shell;
  readonly caller: CallerState;
  /** Ask before all of it is erased; there is nothing to ask before a call has begun. */
  readonly onClear?: () => void;
}

/** Who calls. Nothing of it leaves the tab but in the job that the staff copies. */
export function CallerCard(props: Props) {
  const t = sayer(props);
  const common = (field: CallerField) => ({
    id: `desk-${field}`,
    autocomplete: 'off' as const,
    maxlength: callerMost[field],
    value: props.caller.caller()[field] ?? '',
    onInput: (event: { readonly currentTarget: { readonly value: string } }) =>
      props.caller.set(field, event.currentTarget.value),
  });
  return (
    <section class="panel caller">
      <h2>
        {t('desk:caller.title')} <Key of={letters.caller} />
      </h2>
      <div class="fields">
        <For each={callerFields}>
          {(field) => (
            <p class={`field of-${field}`}>
              <label for={`desk-${field}`}>{t(`job:lines.${field}`)}</label>
              <Show
                when={field === 'remark'}
                fallback={
                  <input
                    {...common(field)}
                    type={field === 'phone' ? 'tel' : 'text'}
                    spellcheck={false}
                    list={field === 'payer' ? 'desk-payers' : undefined}
                  />
                }
              >
                <textarea {...common(field)} rows="3" />
              </Show>
            </p>
          )}
        </For>
        <datalist id="desk-payers">
          <For each={props.page.words.list('desk:caller.payers')}>
            {(payer) => <option value={payer} />}
          </For>
        </datalist>
      </div>
      <p class="quiet">
        {t(props.page.keepCaller === 'tab' ? 'desk:caller.privateKept' : 'desk:caller.private')}
      </p>
      <Show when={props.onClear}>
        {(clear) => (
          <KeyButton of={letters.clear} says={t('desk:caller.clear')} onClick={() => clear()()} />
        )}
      </Show>
    </section>
  );
}
