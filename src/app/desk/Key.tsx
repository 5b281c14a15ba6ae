/** The hint of a key, beside what it does; a screen reader hears it in the list of keys. */
export function Key(props: { readonly of: string }) {
  return <kbd aria-hidden="true">{props.of.length === 1 ? props.of.toUpperCase() : props.of}</kbd>;
}
