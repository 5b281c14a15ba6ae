import { For, type JSX } from 'solid-js';

/** A list of what things are called and what they are. */
export function Pairs(props: {
  readonly rows: readonly (readonly [name: JSX.Element, is: JSX.Element])[];
  readonly class?: string;
}): JSX.Element {
  return (
    <dl class={props.class}>
      <For each={props.rows}>
        {([name, is]) => (
          <div>
            <dt>{name}</dt>
            <dd>{is}</dd>
          </div>
        )}
      </For>
    </dl>
  );
}
