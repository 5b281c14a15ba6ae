import { For } from 'solid-js';
import { letterActions, letters, type Action } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { DeskProps, Made } from './state.ts';

/** The short list of keys, always on the screen; single keys can be switched off (WCAG 2.1.4). */
export function Keys(props: DeskProps & Pick<Made, 'shortcuts'>) {
  const t = sayer(props);
  const list = (): readonly (readonly [string, Exclude<Action['do'], 'forward'>])[] => [
    ['1–9 -', 'answer'],
    ['0 ?', 'unsure'],
    [t('desk:keys.space'), 'tick'],
    ['← →', 'back'],
    [t('desk:keys.esc'), 'leave'],
    ...letterActions.map((action) => [letters[action].toUpperCase(), action] as const),
  ];
  return (
    <section class="keys" aria-label={t('desk:keys.title')}>
      <dl>
        <For each={list()}>
          {([key, what]) => (
            <div>
              <dt>
                <kbd>{key}</kbd>
              </dt>
              <dd>{t(`desk:keys.${what}`)}</dd>
            </div>
          )}
        </For>
      </dl>
      <label>
        <input
          type="checkbox"
          checked={props.shortcuts.on()}
          onChange={({ currentTarget }) => props.shortcuts.turn(currentTarget.checked)}
        />
        {t('desk:keys.on')}
      </label>
    </section>
  );
}
