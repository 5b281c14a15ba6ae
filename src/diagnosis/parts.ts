import { at, sum } from './numbers.ts';
import type { Model, PartId } from './types.ts';

export interface Load {
  readonly parts: readonly PartId[];
  /** Probability that the repair needs no part beyond these. */
  readonly chance: number;
}

/** Chances are sums of shares; one wanted as 1 may come out a rounding error below it. */
export const ROUNDING = 1e-9;

/** For each fault, in the model's order, the mask of the parts its repair needs. */
export function partMasks(model: Model): number[] {
  const bit = new Map(model.parts.map(({ id }, index) => [id, index]));
  return model.faults.map(({ parts }) =>
    parts.reduce((mask, part) => mask | (1 << (bit.get(part) ?? 0)), 0),
  );
}

function bitCount(mask: number): number {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++;
  return count;
}

const named = (model: Model, mask: number) =>
  model.parts.filter((_, bit) => (mask >>> bit) & 1).map(({ id }) => id);

/** Every set of at most `most` parts with its size, cost and chance. */
function* loads(model: Model, shares: readonly number[], most: number) {
  const masks = partMasks(model);
  // A part that no fault needs would only double the work.
  const useful = masks.reduce((all, mask) => all | mask, 0);
  for (let mask = 0; mask < 2 ** model.parts.length; mask++) {
    const size = bitCount(mask);
    if ((mask & ~useful) !== 0 || size > most) continue;
    const chance = sum(
      shares.map((share, fault) => ((at(masks, fault) & ~mask) === 0 ? share : 0)),
    );
    const cost = sum(model.parts.map((part, bit) => ((mask >>> bit) & 1 ? part.cost : 0)));
    yield { mask, size, cost, chance };
  }
}

/**
 * The parts to load for one visit: the fewest (or, by `cost`, the cheapest) with
 * which the chance of finishing on it is at least `chance`. Exact, over every set
 * of parts. Ties: the cheaper (the fewer), then the greater chance.
 */
export function loadFor(
  model: Model,
  shares: readonly number[],
  chance: number,
  by: 'count' | 'cost' = 'count',
): Load {
  const enough = [...loads(model, shares, Infinity)].filter(
    (one) => one.chance >= chance - ROUNDING,
  );
  const [best] = enough.sort((a, b) => {
    const [size, cost] = [a.size - b.size, a.cost - b.cost];
    return (by === 'count' ? size || cost : cost || size) || b.chance - a.chance;
  });
  // All parts together always suffice for a chance of at most 1.
  if (!best) throw new RangeError('a chance above 1');
  return { parts: named(model, best.mask), chance: best.chance };
}

/** The at most `count` parts with the greatest chance of finishing; ties: fewer, then cheaper. */
export function bestLoad(model: Model, shares: readonly number[], count: number): Load {
  let best = { mask: 0, size: 0, cost: 0, chance: -1 };
  for (const one of loads(model, shares, count)) {
    const better = one.chance - best.chance || best.size - one.size || best.cost - one.cost;
    if (better > 0) best = one;
  }
  return { parts: named(model, best.mask), chance: best.chance };
}
