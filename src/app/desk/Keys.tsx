import { For } from 'solid-js';
import { keysTold } from './keys.ts';
import { shortcutsOn, turnShortcuts } from './shortcuts.ts';
import { sayer } from '../shared/words.ts';
import type { Shell } from './page.ts';

/** The keys, behind one line; single keys can be switched off (WCAG 2.1.4). */
export function Keys(props: { readonly page: Shell }) {
  const t = sayer(props);
  return (
    <details class="keys" id="desk-keys">
      <summary>
        <kbd aria-hidden="true">?</kbd> {t('desk:keys.title')}
      </summary>
      <dl>
        <For each={keysTold(t)}>
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
          checked={shortcutsOn()}
          onChange={({ currentTarget }) => turnShortcuts(currentTarget.checked)}
        />
        {t('desk:keys.on')}
      </label>
    </details>
  );
}

/** Open or close the list of keys. */
export function toggleKeys(): void {
  const list = document.querySelector<HTMLDetailsElement>('#desk-keys');
  if (list) list.open = !list.open;
}
