import { Show, createSignal, type JSX } from 'solid-js';

/** A card that is folded; what is in it is made when it is first opened. */
export function Fold(props: {
  readonly class: string;
  readonly title: string;
  readonly children: JSX.Element;
}): JSX.Element {
  const [opened, setOpened] = createSignal(false);
  return (
    <details class={`card ${props.class}`} onToggle={() => setOpened(true)}>
      <summary>
        <h2>{props.title}</h2>
      </summary>
      <Show when={opened()}>{props.children}</Show>
    </details>
  );
}
