import { For, type JSX } from 'solid-js';
import { jobLabels } from '../shared/job-text.ts';
import { sayer } from '../shared/words.ts';
import type { RouteProps } from './props.ts';

const fields = ['time', 'name', 'phone', 'address', 'remark'] as const;

/** A visit without a code, entered by hand: as the job that a desk would hand over. */
export function AddByHand(props: RouteProps): JSX.Element {
  const t = sayer(props);
  const add = async (form: HTMLFormElement): Promise<void> => {
    const labels = jobLabels(props.page.words);
    const values = new FormData(form);
    const lines = fields.flatMap((field) => {
      const value = values.get(field);
      const text = typeof value === 'string' ? value.trim() : '';
      return text === '' ? [] : [`${labels[field]}: ${text}`];
    });
    const first = form.querySelector('input');
    if (lines.length > 0) {
      const added = await props.route.add([...lines, `${labels.code}: ${labels.none}`].join('\n'));
      props.say(
        added.ok
          ? t('round:said.added', { count: 1 })
          : t(`round:problem.${added.error.code}`, { count: 1, most: 0, row: 1 }),
      );
      if (added.ok) form.reset();
    }
    first?.focus();
  };
  return (
    <details class="card by-hand" aria-labelledby="by-hand">
      <summary id="by-hand">{t('round:byHand.title')}</summary>
      <form
        onSubmit={(event) => {
          event.preventDefault();
          void add(event.currentTarget);
        }}
      >
        <div class="fields">
          <For each={fields}>
            {(field) => (
              <p>
                <label for={`hand-${field}`}>{t(`job:lines.${field}`)}</label>
                <input
                  id={`hand-${field}`}
                  name={field}
                  type={field === 'phone' ? 'tel' : 'text'}
                  autocomplete="off"
                />
              </p>
            )}
          </For>
        </div>
        <button type="submit" disabled={props.route.busy() !== undefined}>
          {t('round:byHand.add')}
        </button>
      </form>
    </details>
  );
}
