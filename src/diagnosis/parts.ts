import { at, sum } from './numbers.ts';
import type { Model, PartId } from './types.ts';

export interface Load {
  readonly parts: readonly PartId[];
  /** Probability that the repair needs no part beyond these, given that the fault is a listed one. */
  readonly chance: number;
}

/** Chances are sums of shares; one wanted as 1 may come out a rounding error below it. */
export const ROUNDING = 1e-9;

/** Sets of parts are enumerated: the parts a visit most likely needs, so many of them. */
export const MOST_PARTS = 12;

function bitCount(mask: number): number {
  let count = 0;
  for (let rest = mask; rest !== 0; rest &= rest - 1) count++;
  return count;
}

/** A part to choose from with the mask of the needs it meets. */
interface Choice {
  readonly id: PartId;
  readonly cost: number;
  readonly meets: number;
}

/** The parts that faults need as bits, and those that meet needs, the least likely left out. */
function choicesOf(model: Model, shares: readonly number[]) {
  const chanceOf = (part: PartId) =>
    sum(shares.filter((_, fault) => at(model.faults, fault).parts.includes(part)));
  const needs = model.parts
    .map(({ id }) => ({ id, chance: chanceOf(id) }))
    .filter(({ id }) => model.faults.some(({ parts }) => parts.includes(id)))
    .toSorted((a, b) => b.chance - a.chance)
    .slice(0, MOST_PARTS)
    .map(({ id }) => id);
  const choices = model.parts.flatMap(({ id, cost, covers = [] }): Choice[] => {
    const meets = needs.reduce(
      (mask, need, bit) => (need === id || covers.includes(need) ? mask | (1 << bit) : mask),
      0,
    );
    return needs.includes(id) ? [{ id, cost, meets }] : [];
  });
  // The shares of the faults that need the same parts, together; one that needs a part left out
  // is covered by no load.
  const wanted = new Map<number, number>();
  const listed = sum(shares.filter((_, fault) => !at(model.faults, fault).unlisted));
  for (const [fault, { parts, unlisted }] of model.faults.entries()) {
    if (unlisted || parts.some((part) => !needs.includes(part))) continue;
    const mask = parts.reduce((all, part) => all | (1 << needs.indexOf(part)), 0);
    wanted.set(mask, (wanted.get(mask) ?? 0) + at(shares, fault) / listed);
  }
  return { choices, wanted: [...wanted] };
}

/** Every set of at most `most` parts with its size, cost and chance. */
function* loads(model: Model, shares: readonly number[], most: number) {
  const { choices, wanted } = choicesOf(model, shares);
  for (let mask = 0; mask < 2 ** choices.length; mask++) {
    const size = bitCount(mask);
    if (size > most) continue;
    const taken = choices.filter((_, bit) => (mask >>> bit) & 1);
    const met = taken.reduce((all, { meets }) => all | meets, 0);
    const chance = sum(wanted.map(([needed, share]) => ((needed & ~met) === 0 ? share : 0)));
    yield { taken, size, cost: sum(taken.map(({ cost }) => cost)), chance };
  }
}

const named = ({
  taken,
  chance,
}: {
  readonly taken: readonly Choice[];
  readonly chance: number;
}) => ({
  parts: taken.map(({ id }) => id),
  chance,
});

/**
 * The parts to load for one visit: the fewest (or, by `cost`, the cheapest) with
 * which the chance of finishing on it is at least `chance`. Exact, over every set
 * of the parts most likely needed. Ties: the cheaper (the fewer), then the greater
 * chance. Where no such set does so much, the one that does most.
 */
export function loadFor(
  model: Model,
  shares: readonly number[],
  chance: number,
  by: 'count' | 'cost' = 'count',
): Load {
  if (chance > 1 + ROUNDING) throw new RangeError('a chance above 1');
  const all = [...loads(model, shares, Infinity)];
  const wanted = Math.min(chance, Math.max(...all.map((one) => one.chance)));
  const enough = all.filter((one) => one.chance >= wanted - ROUNDING);
  const [best] = enough.sort((a, b) => {
    const [size, cost] = [a.size - b.size, a.cost - b.cost];
    return (by === 'count' ? size || cost : cost || size) || b.chance - a.chance;
  });
  return best ? named(best) : { parts: [], chance: 0 };
}

/** The at most `count` parts with the greatest chance of finishing; ties: fewer, then cheaper. */
export function bestLoad(model: Model, shares: readonly number[], count: number): Load {
  let best = { taken: [] as readonly Choice[], size: 0, cost: 0, chance: -1 };
  for (const one of loads(model, shares, count)) {
    const better = one.chance - best.chance || best.size - one.size || best.cost - one.cost;
    if (better > 0) best = one;
  }
  return named(best);
}
