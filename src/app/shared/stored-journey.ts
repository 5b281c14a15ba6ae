import { parseRaw } from '../../address/grammar.ts';
import { tryStorage } from './storage.ts';

/**
 * Where a copy of the newest journey is kept to resume from: an address of this site, when it was
 * kept, and the page's title, once it is known; a space between. In the tab's own storage lies the
 * address of this tab's: what another tab answered is not taken for what was answered here.
 */
export const STORED = 'hobnote.journey';
/** Those begun before it, newest first, a line each. */
const EARLIER = 'hobnote.journeys';
/** Says that the reader had the copies taken off: Back must not write them again. */
export const FORGOTTEN = 'hobnote.forgotten';
/** How many are kept in all. */
const MOST = 3;

/** All that are kept, newest first. Throws where storage is blocked. */
export function keptJourneys(): string[] {
  return [STORED, EARLIER]
    .flatMap((key) => localStorage.getItem(key)?.split('\n') ?? [])
    .filter((line) => line !== '');
}

/** Whether a journey is among them, by its address's fragment. */
export const isKept = (hash: string): boolean | undefined =>
  tryStorage(() => keptJourneys().some((kept) => kept.split(' ', 1)[0]?.endsWith(hash)));

/** The guide a kept journey began in and its answers: a longer one on the same way begins with it. */
function wayOf(kept: string): string {
  const [address = ''] = kept.split(' ', 1);
  const { g = address.split('/').at(-3) ?? '', j = '' } = parseRaw(address.replace(/^[^#]*/, ''));
  return `${g}#${j}~`;
}

/**
 * Keep an address with its journey; storage may be blocked or full, the address holds it too. A
 * journey takes the place of what led to it, and after Back of what it went back from; the first
 * answer of another one leaves the others beside it. After the reader had all copies taken off, a
 * page that is only shown, with its title, keeps nothing; the next answer tapped does.
 */
export function store(address: string, title = ''): void {
  tryStorage(() => {
    if (title !== '' && localStorage.getItem(FORGOTTEN) !== null) return;
    localStorage.removeItem(FORGOTTEN);
    sessionStorage.setItem(STORED, address);
    const way = wayOf(address);
    const isFirst = way.indexOf('~') === way.length - 1;
    const others = keptJourneys().filter((kept, index) => {
      const other = wayOf(kept);
      return !way.startsWith(other) && (isFirst || index > 0 || !other.startsWith(way));
    });
    const minute = Math.floor(Date.now() / 60_000).toString(36);
    localStorage.setItem(STORED, `${address} ${minute} ${title}`.trim());
    localStorage.setItem(EARLIER, others.slice(0, MOST - 1).join('\n'));
  });
}
