import { at, sum } from './numbers.ts';
import type { Search } from './order.ts';

/**
 * Orders that need not be searched. Checks that need the same access, share no
 * fault with any other check, and wait for none and none for them, appear in
 * some best order by minutes per probability, the smaller first (Kalagnanam &
 * Henrion 1990). So each waits for the one before it, which spares most sets.
 *
 * Why it holds, for such a before b, anything X between, and b of the better
 * ratio (probability over minutes). If b's ratio is at least that of a and X
 * together, b moves to the front without loss. Otherwise X's ratio is above b's,
 * and so above a's: a moves behind X without loss, as what a opened is then
 * opened by X or by a, not earlier; then a and b are neighbours and change places.
 *
 * Returns, for each check, its `after` with these waits added.
 */
export function withChains(search: Search): number[] {
  const { checks, shares, opened } = search;
  const alone = [...checks.keys()].filter((index) => {
    const others = checks.filter((_, other) => other !== index);
    return (
      at(checks, index).finds !== 0 &&
      at(checks, index).after === 0 &&
      others.every(
        ({ finds, after }) =>
          (finds & at(checks, index).finds) === 0 && ((after >>> index) & 1) === 0,
      )
    );
  });
  const chance = (index: number) =>
    sum(shares.filter((_, bit) => (at(checks, index).finds >>> bit) & 1));
  // By cross-multiplying: a chance may be 0.
  const better = (a: number, b: number) =>
    at(checks, a).minutes * chance(b) - at(checks, b).minutes * chance(a);
  const after = checks.map((one) => one.after);
  const sorted = alone.toSorted((a, b) => better(a, b) || a - b);
  const last = new Map<number, number>();
  for (const index of sorted) {
    const access = at(checks, index).access & ~opened;
    const before = last.get(access);
    if (before !== undefined) after[index] = 1 << before;
    last.set(access, index);
  }
  return after;
}
