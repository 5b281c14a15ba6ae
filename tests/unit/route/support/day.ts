/** A day walked visit by visit, piece by piece. */
import type { PartsToBring, RouteVisit } from '../../../../src/route/parts-to-bring.ts';

/** What is along: for each visit its own parts, and the pieces of the common stock. */
export interface Along {
  readonly own: readonly ReadonlySet<string>[];
  readonly stock: ReadonlyMap<string, number>;
}

export const alongOf = (visits: readonly RouteVisit[], { own, stock }: PartsToBring): Along => ({
  own: visits.map((visit) => {
    const parts = own.get(visit) ?? [];
    const covered = visit.model.parts.filter(({ id }) => parts.includes(id));
    return new Set<string>([...parts, ...covered.flatMap(({ covers = [] }) => covers)]);
  }),
  stock: new Map(stock.map(({ part, count }) => [String(part), count])),
});

/** Of a day with these faults the number of visits that need no second one, walked in order. */
export function walked(
  visits: readonly RouteVisit[],
  { own, stock }: Along,
  faults: readonly number[],
) {
  const left = new Map(stock);
  let finished = 0;
  for (const [visit, { model }] of visits.entries()) {
    const { parts = [], unlisted } = model.faults[faults[visit] ?? 0] ?? {};
    const missing = parts.filter((part) => !own[visit]?.has(part));
    // A repair that needs a part that is not along at all is not begun.
    if (unlisted || missing.some((part) => (stock.get(part) ?? 0) === 0)) continue;
    const got = missing.map((part) => {
      const pieces = left.get(part) ?? 0;
      left.set(part, Math.max(0, pieces - 1));
      return pieces > 0;
    });
    if (got.every(Boolean)) finished++;
  }
  return finished;
}
