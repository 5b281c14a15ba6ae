import { poissonBinomial, tails } from './demand.ts';
import { at, sum } from './numbers.ts';
import { ROUNDING } from './parts.ts';
import type { Model, PartId } from './types.ts';

export interface RoundStock {
  /** Only parts of which at least one is loaded, in the model's order. */
  readonly stock: readonly { readonly part: PartId; readonly count: number }[];
  /** Probability that no visit of the round lacks a part is at least this. */
  readonly chanceAtLeast: number;
}

/**
 * Demand for each part over a round of visits, given the shares of each visit in
 * the model's order: Poisson-binomial, as each visit needs at most one of a kind.
 */
export function roundDemand(model: Model, visits: readonly (readonly number[])[]): number[][] {
  return model.parts.map(({ id }) => {
    const needed = model.faults.map(({ parts }) => parts.includes(id));
    return poissonBinomial(
      visits.map((shares) => Math.min(1, sum(shares.filter((_, fault) => needed[fault])))),
    );
  });
}

/** Counts for the parts seen so far, and the chance of a shortage summed over them. */
interface Choice {
  readonly counts: readonly number[];
  readonly shortage: number;
}

/** For each number of pieces in all, the choice with the least summed shortage. */
function withPart(choices: readonly Choice[], short: readonly number[]): Choice[] {
  const next: Choice[] = [];
  for (const [pieces, { counts, shortage }] of choices.entries())
    for (const [count, above] of short.entries()) {
      const total = shortage + above;
      if (total < (next[pieces + count]?.shortage ?? Infinity))
        next[pieces + count] = { counts: [...counts, count], shortage: total };
    }
  return next;
}

/**
 * The smallest stock for a round of visits with which no visit lacks a part, with
 * at least the chosen chance; among equally small ones the surest.
 *
 * Parts depend on each other, as one visit has one fault. So the chance of any
 * shortage is bounded by the sum over parts (Boole's inequality), and the stock is
 * the smallest for which that sum is at most 1 − chance: found exactly, part by
 * part over the number of pieces. The promise always holds; when the chosen
 * chance is low the bound can cost a piece more than needed.
 */
export function roundStock(
  model: Model,
  visits: readonly (readonly number[])[],
  chance: number,
): RoundStock {
  const short = roundDemand(model, visits).map(tails);
  const choices = short.reduce(withPart, [{ counts: [], shortage: 0 }]);
  const best = choices.find(({ shortage }) => shortage <= 1 - chance + ROUNDING);
  // One of each part for each visit leaves no shortage at all.
  if (!best) throw new RangeError('a chance above 1');
  return {
    stock: model.parts.flatMap(({ id }, part) =>
      at(best.counts, part) > 0 ? [{ part: id, count: at(best.counts, part) }] : [],
    ),
    chanceAtLeast: 1 - best.shortage,
  };
}
