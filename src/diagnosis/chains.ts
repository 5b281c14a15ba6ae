import { sum } from './numbers.ts';
import type { Search } from './order.ts';

/**
 * Orders that need not be searched. Some best order has a check b before a where all of this holds:
 * b waits for none, and none waits for a; what b needs open, a needs open too; and what b alone
 * finds, over its minutes, is at least all that a finds over its own (after Kalagnanam & Henrion
 * 1990). So a waits for b, which spares most sets.
 *
 * Why, for any X between a and b. Before a there is found with probability A by a and x by X after
 * it; b's own is p wherever it stands, as none but b finds it. If p over b's minutes is at least
 * A + x over those of a and X, b moves to the front without loss: what it opens, a had to. Else x
 * over X's minutes is above p over b's, and so above A over a's: a moves behind X without loss, and
 * then behind b. Of the pairs that an order has the wrong way take two nearest to each other: such a
 * move makes no other pair wrong, as these waits are transitive, so that the moves come to an end.
 *
 * Returns, for each check, its `after` with these waits added.
 */
export function withChains({ checks, shares, opened }: Search): number[] {
  const chance = (mask: number) => sum(shares.filter((_, bit) => (mask >>> bit) & 1));
  const waitedFor = checks.reduce((all, { after }) => all | after, 0);
  const rates = checks.map(({ minutes, finds }, index) => {
    const others = checks.reduce((all, one, other) => (other === index ? all : all | one.finds), 0);
    return { own: chance(finds & ~others) / minutes, all: chance(finds) / minutes };
  });
  return checks.map((a, last) => {
    if ((waitedFor >>> last) & 1) return a.after;
    const all = rates[last]?.all ?? 0;
    return checks.reduce((after, b, first) => {
      const own = rates[first]?.own ?? 0;
      const waits = b.after === 0 && (b.access & ~(a.access | opened)) === 0;
      const better = own > all || (own === all && first < last);
      return first !== last && waits && better ? after | (1 << first) : after;
    }, a.after);
  });
}
