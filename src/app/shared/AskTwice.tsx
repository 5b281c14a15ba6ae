import { Show, createSignal, type JSX } from 'solid-js';

/** A button for what cannot be undone: it asks once more, and the answer takes the focus. */
export function AskTwice(props: {
  readonly label: string;
  readonly sure: string;
  readonly keep: string;
  readonly onYes: () => void;
}): JSX.Element {
  const [asking, setAsking] = createSignal(false);
  return (
    <Show
      when={asking()}
      fallback={
        <button type="button" class="plain" onClick={() => setAsking(true)}>
          {props.label}
        </button>
      }
    >
      <button
        type="button"
        ref={(element) => queueMicrotask(() => element.focus())}
        onClick={() => {
          setAsking(false);
          props.onYes();
        }}
      >
        {props.sure}
      </button>
      <button type="button" class="plain" onClick={() => setAsking(false)}>
        {props.keep}
      </button>
    </Show>
  );
}
