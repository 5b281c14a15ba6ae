type Given<T> = { [Name in keyof T]?: Exclude<T[Name], undefined> };

/**
 * The entries that have a value: with `exactOptionalPropertyTypes` an optional entry is absent or
 * something, never undefined.
 */
export function defined<T extends object>(entries: T): Given<T> {
  const given = Object.entries(entries).filter(([, value]) => value !== undefined);
  return Object.fromEntries(given) as Given<T>;
}
