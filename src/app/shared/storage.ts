/**
 * What a use of the browser's storage gives; undefined where that is switched off, full or holds
 * something broken. Nothing depends on it: what matters stands in the address or on the page.
 */
export function tryStorage<T>(use: () => T): T | undefined {
  try {
    return use();
  } catch {
    return undefined;
  }
}
