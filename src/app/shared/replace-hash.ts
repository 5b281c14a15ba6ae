/**
 * Puts `#…` in place of the address's fragment, without a new entry in the history; '' takes it off.
 * An empty address would leave it as it is (HTML standard, shared history push/replace state steps).
 */
export function replaceHash(hash: string): void {
  history.replaceState(history.state, '', hash || location.pathname + location.search);
}
