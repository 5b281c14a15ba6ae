import { For } from 'solid-js';

/** A code in groups of four, each over its reading in the spelling alphabet. */
export function Groups(props: {
  code: string;
  spelled: readonly (readonly string[])[];
  label: string;
}) {
  return (
    <ol class="groups" aria-label={props.label}>
      <For each={props.code.split('-')}>
        {(group, index) => (
          <li>
            <strong>{group}</strong>
            <span>{props.spelled[index()]?.join('\n')}</span>
          </li>
        )}
      </For>
    </ol>
  );
}
