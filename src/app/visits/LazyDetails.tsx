import { Show, createSignal, type JSX } from 'solid-js';

interface Props {
  readonly title: string;
  /** The class of the fold. */
  readonly class: string;
  /** Said where the content cannot be fetched; the fold can be opened again. */
  readonly failed: string;
  /** Fetches the content. */
  readonly content: () => Promise<() => JSX.Element>;
}

/** A fold whose content is fetched when it is first opened, so that the page stays light. */
export function LazyDetails(props: Props): JSX.Element {
  const [made, setMade] = createSignal<() => JSX.Element>();
  const [failed, setFailed] = createSignal(false);
  const open = () => {
    if (made()) return;
    setFailed(false);
    props.content().then(
      (make) => setMade(() => make),
      () => setFailed(true),
    );
  };
  return (
    <details
      class={`card ${props.class}`}
      onToggle={(event) => {
        if (event.currentTarget.open) open();
      }}
    >
      <summary>
        <h2>{props.title}</h2>
      </summary>
      <Show when={failed()}>
        <p role="alert">{props.failed}</p>
      </Show>
      {made()?.()}
    </details>
  );
}
