/**
 * Puts `#…` in place of the address's fragment, without a new entry in the history; '' takes it off.
 * An empty address would leave it as it is (HTML standard, shared history push/replace state steps).
 */
export function replaceHash(hash: string, state: unknown = history.state): void {
  history.replaceState(state, '', hash || location.pathname + location.search);
}
