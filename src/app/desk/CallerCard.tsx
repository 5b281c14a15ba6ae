import { For, Show } from 'solid-js';
import { callerFields, callerMost, payers, type CallerField } from '../../visit/job.ts';
import { Key } from './Key.tsx';
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
  return (
    <section class="panel caller">
      <h2>
        {t('desk:caller.title')} <Key of={letters.caller} />
      </h2>
      <div class="fields">
        <For each={callerFields}>
          {(field) => (
            <p class={`field ${field}`}>
              <label for={`desk-${field}`}>{t(`desk:caller.${field}`)}</label>
              <Field {...props} field={field} />
            </p>
          )}
        </For>
      </div>
      <p class="quiet">
        {t(props.page.keepCaller === 'tab' ? 'desk:caller.privateKept' : 'desk:caller.private')}
      </p>
      <Show when={props.onClear}>
        {(clear) => (
          <button type="button" class="plain" onClick={() => clear()()}>
            <Key of={letters.clear} /> {t('desk:caller.clear')}
          </button>
        )}
      </Show>
    </section>
  );
}

/** One field; its name on the page is the field's. */
function Field(props: Props & { readonly field: CallerField }) {
  const t = sayer(props);
  const value = () => props.caller.caller()[props.field] ?? '';
  const set = (event: { readonly currentTarget: { readonly value: string } }): void =>
    props.caller.set(props.field, event.currentTarget.value);
  const common = () => ({
    id: `desk-${props.field}`,
    autocomplete: 'off' as const,
    maxlength: callerMost[props.field],
    value: value(),
  });
  return (
    <Show
      when={props.field === 'pays' || props.field === 'remark' ? props.field : undefined}
      fallback={
        <input
          {...common()}
          type={props.field === 'phone' ? 'tel' : 'text'}
          spellcheck={false}
          onInput={set}
        />
      }
    >
      {(field) => (
        <Show
          when={field() === 'pays'}
          fallback={<textarea {...common()} rows="3" onInput={set} />}
        >
          <select id="desk-pays" onChange={set}>
            <option value="">{t('desk:details.unanswered')}</option>
            <For each={payers}>
              {(payer) => (
                <option value={payer} selected={value() === payer}>
                  {t(`desk:caller.payers.${payer}`)}
                </option>
              )}
            </For>
          </select>
        </Show>
      )}
    </Show>
  );
}
