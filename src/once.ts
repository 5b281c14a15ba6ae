/** A value made when it is first asked for. */
export function once<T>(make: () => T): () => T {
  const made = eachOnce(make);
  return () => made(undefined);
}

/** A function of a name, or of a thing that never changes, worked out once for each. */
export function eachOnce<K, T>(make: (of: K) => T): (of: K) => T {
  const made = new Map<K, T>();
  return (of) => {
    if (!made.has(of)) made.set(of, make(of));
    return made.get(of) as T;
  };
}
