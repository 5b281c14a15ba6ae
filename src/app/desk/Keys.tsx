import { For } from 'solid-js';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps } from './state.ts';

/** The short list of keys, always on the screen; single keys can be switched off (WCAG 2.1.4). */
export function Keys(
  props: Pick<DeskProps, 'page'> & {
    readonly on: boolean;
    readonly onSwitch: (on: boolean) => void;
  },
) {
  const t = sayer(props);
  const list = () => [
    ['1–9', 'answer'],
    ['0 ?', 'unsure'],
    [t('keys.space'), 'tick'],
    ['← →', 'back'],
    [t('keys.esc'), 'leave'],
    ...Object.entries(letters).map(([action, letter]) => [letter.toUpperCase(), action]),
  ];
  return (
    <section class="keys" aria-label={t('keys.title')}>
      <dl>
        <For each={list()}>
          {([key, what]) => (
            <div>
              <dt>
                <kbd>{key}</kbd>
              </dt>
              <dd>{t(`keys.${what ?? ''}`)}</dd>
            </div>
          )}
        </For>
      </dl>
      <label>
        <input
          type="checkbox"
          checked={props.on}
          onChange={({ currentTarget }) => props.onSwitch(currentTarget.checked)}
        />
        {t('keys.on')}
      </label>
    </section>
  );
}
