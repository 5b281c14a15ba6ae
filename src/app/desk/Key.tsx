/** The hint of a key, beside what it does; a screen reader hears it in the list of keys. */
export function Key(props: { readonly of: string }) {
  return <kbd aria-hidden="true">{props.of.length === 1 ? props.of.toUpperCase() : props.of}</kbd>;
}

/** A button behind the hint of its key. */
export function KeyButton(props: {
  readonly of: string;
  readonly says: string;
  readonly onClick: () => void;
  /** Plain where left out. */
  readonly class?: string;
}) {
  return (
    <button type="button" class={props.class ?? 'plain'} onClick={() => props.onClick()}>
      <Key of={props.of} /> {props.says}
    </button>
  );
}
