import { parseRaw } from '../../address/grammar.ts';
import { parseJourney } from '../../address/journey-text.ts';
import { STORED } from '../shared/stored-journey.ts';
import { tryStorage } from '../shared/storage.ts';

/** Longer than any address the guide writes. */
export const SAVED_MOST = 20_000;

/**
 * The address of a journey kept on the device, whole; undefined for anything that is not an address
 * of this site with a journey in its fragment. Never throws.
 *
 * @param kept as `stored-journey.ts` writes it: an address, and a title after a space
 * @param here this page's address
 */
export function savedAddress(kept: string, here: string): URL | undefined {
  const [text = ''] = kept.split(' ', 1);
  if (kept.length >= SAVED_MOST || !URL.canParse(text, here)) return undefined;
  const url = new URL(text, here);
  const right =
    url.origin === new URL(here).origin &&
    /^\/[\w./-]*$/.test(url.pathname) &&
    parseJourney(parseRaw(url.hash).j).length > 0;
  return right ? url : undefined;
}

/** The newest journey kept on the device, or by this tab, where it is the page's at a path. */
export function savedFor(
  path: string,
  storage: 'localStorage' | 'sessionStorage' = 'localStorage',
): URL | undefined {
  const text = tryStorage(() => globalThis[storage].getItem(STORED)) ?? '';
  const kept = savedAddress(text, location.href);
  return kept?.pathname === path ? kept : undefined;
}
