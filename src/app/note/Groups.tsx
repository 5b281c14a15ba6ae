import { For, Show } from 'solid-js';

/** A code in its groups, each over its reading in the spelling alphabet. */
export function Groups(props: {
  code: string;
  spelled?: readonly (readonly string[])[];
  /** What a speaker of the page's language says as well, '' where that is the same. */
  home?: readonly (readonly string[])[] | undefined;
  label: string;
}) {
  const beside = (group: number) => (word: string, at: number) =>
    [word, props.home?.[group]?.[at]].filter(Boolean).join(' · ');
  return (
    <ol class="groups" aria-label={props.label}>
      <For each={props.code.split('-')}>
        {(group, index) => (
          <li>
            <strong>{group}</strong>
            <Show when={props.spelled?.[index()]}>
              {(words) => (
                <span classList={{ lines: !!props.home }}>
                  {words().map(beside(index())).join('\n')}
                </span>
              )}
            </Show>
          </li>
        )}
      </For>
    </ol>
  );
}
