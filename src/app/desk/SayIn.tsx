import { For, Show } from 'solid-js';
import { Key } from './Key.tsx';
import { letters } from './keys.ts';
import { sayer } from '../shared/words.ts';
import type { Page } from './page.ts';

/** In which language the caller is spoken to; all else stays in the staff's. */
export function SayIn(props: { readonly page: Page }) {
  const t = sayer(props);
  const languages = () => Object.entries(props.page.spoken);
  return (
    <Show when={languages().length > 0}>
      <label class="say-in">
        {t('desk:bar.sayIn')} <Key of={letters.language} />
        <select
          id="desk-say-in"
          onChange={({ currentTarget }) => props.page.sayIn(currentTarget.value)}
        >
          <option value="">{props.page.ownName}</option>
          <For each={languages()}>
            {([language, { name }]) => (
              <option
                value={language}
                lang={language}
                selected={props.page.said()?.language === language}
              >
                {name}
              </option>
            )}
          </For>
        </select>
      </label>
    </Show>
  );
}
