/**
 * What a function that can meet bad input returns: either the value, or the
 * problem as data. Problems carry a stable `code` and the facts; they become
 * sentences only at the edge, in the reader's language.
 */
export type Result<T, E> =
  { readonly ok: true; readonly value: T } | { readonly ok: false; readonly error: E };

/** Wrap a value as a success. */
export function ok<T>(value: T): { readonly ok: true; readonly value: T } {
  return { ok: true, value };
}

/** Wrap a problem as a failure. */
export function fail<E>(error: E): { readonly ok: false; readonly error: E } {
  return { ok: false, error };
}
