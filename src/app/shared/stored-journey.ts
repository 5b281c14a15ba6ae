import { tryStorage } from './storage.ts';

/** Where a copy of the journey is kept to resume from: an address of this site. */
export const STORED = 'hobnote.journey';

/** Keep an address with its journey; storage may be blocked or full, the address holds it too. */
export function store(address: string): void {
  tryStorage(() => localStorage.setItem(STORED, address));
}
