import { tryStorage } from './storage.ts';

/** Where a copy of the journey is kept to resume from: an address of this site. */
export const KEPT = 'hobnote.journey';

/** Keep an address with its journey; storage may be blocked or full, the address holds it too. */
export function keep(address: string): void {
  tryStorage(() => localStorage.setItem(KEPT, address));
}
