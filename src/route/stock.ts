import { poissonBinomial, tails } from '../diagnosis/demand.ts';
import { at, sum } from '../diagnosis/numbers.ts';
import { ROUNDING } from '../diagnosis/parts.ts';
import type { Model, PartId } from '../diagnosis/types.ts';

/** A visit of a round: the figures of its guide, and the share of each fault in their order. */
export interface RouteVisit {
  readonly model: Model;
  readonly shares: readonly number[];
}

/** The chance that a visit needs each part of its model, in the model's order. */
export function partChances({ model, shares }: RouteVisit): (readonly [PartId, number])[] {
  return model.parts.map(({ id }) => {
    const needing = shares.filter((_, fault) => at(model.faults, fault).parts.includes(id));
    return [id, Math.min(1, sum(needing))] as const;
  });
}

/** For each part the distribution of how many a route needs. */
export type Demand = ReadonlyMap<PartId, readonly number[]>;

/**
 * Demand for each part over a route of visits: Poisson-binomial, as each visit needs at most one
 * of a kind, and no visit tells about another. A part of several guides is one part. In the order
 * in which the visits' models name them.
 */
export function routeDemand(visits: readonly RouteVisit[]): Demand {
  const chances = new Map<PartId, number[]>();
  for (const visit of visits)
    for (const [part, chance] of partChances(visit)) {
      const list = chances.get(part) ?? [];
      chances.set(part, list);
      // A visit that never needs it changes nothing but the length.
      if (chance > 0) list.push(chance);
    }
  return new Map([...chances].map(([part, list]) => [part, poissonBinomial(list)]));
}

export interface RouteStock {
  /** Only parts of which at least one is loaded, in the demand's order. */
  readonly stock: readonly { readonly part: PartId; readonly count: number }[];
  /** Probability that no visit of the route lacks a part is at least this. */
  readonly chanceAtLeast: number;
}

/**
 * Chances of a shortage that are left out of the search: no sum of as many as there are parts
 * comes near the rounding allowed below.
 */
const NOTHING = 1e-13;

/** The counts of a part worth a look, from the first whose own shortage is not too much already. */
interface Range {
  readonly least: number;
  /** P(more than least + index). */
  readonly short: readonly number[];
}

function rangeOf(pmf: readonly number[], most: number): Range {
  const above = tails(pmf);
  const least = above.findIndex((tail) => tail <= most);
  const last = above.findIndex((tail) => tail <= NOTHING);
  return { least, short: above.slice(least, Math.max(least, last) + 1) };
}

/** For each number of pieces above the least, the least shortage, and the choice that has it. */
interface Choices {
  readonly shortage: readonly number[];
  /** By part so far, by pieces: how many of them are this part's. */
  readonly taken: readonly (readonly number[])[];
}

function withPart({ shortage, taken }: Choices, { short }: Range): Choices {
  const size = shortage.length + short.length - 1;
  const best = new Float64Array(size).fill(Infinity);
  const of = new Int32Array(size);
  for (const [pieces, before] of shortage.entries())
    for (const [count, above] of short.entries())
      if (before + above < (best[pieces + count] ?? 0)) {
        best[pieces + count] = before + above;
        of[pieces + count] = count;
      }
  return { shortage: [...best], taken: [...taken, [...of]] };
}

/**
 * The smallest stock for a route of visits with which no visit lacks a part, with
 * at least the chosen chance; among equally small ones the surest.
 *
 * Parts depend on each other, as one visit has one fault. So the chance of any
 * shortage is bounded by the sum over parts (Boole's inequality), and the stock is
 * the smallest for which that sum is at most 1 − chance: found exactly, part by
 * part over the number of pieces. The promise always holds; when the chosen
 * chance is low the bound can cost a piece more than needed.
 */
export function routeStock(demand: Demand, chance: number): RouteStock {
  const most = 1 - chance + ROUNDING;
  // Even one of each part for each visit does not do more than always.
  if (most < 0) throw new RangeError('a chance above 1');
  const ranges = [...demand.values()].map((pmf) => rangeOf(pmf, most));
  const { shortage, taken } = ranges.reduce(withPart, { shortage: [0], taken: [] });
  let pieces = shortage.findIndex((sum) => sum <= most);
  const chanceAtLeast = 1 - at(shortage, pieces);
  const counts = ranges
    .map(({ least }, part) => [least, part] as const)
    .toReversed()
    .map(([least, part]) => {
      const own = at(at(taken, part), pieces);
      pieces -= own;
      return least + own;
    })
    .toReversed();
  return {
    stock: [...demand.keys()].flatMap((part, index) =>
      at(counts, index) > 0 ? [{ part, count: at(counts, index) }] : [],
    ),
    chanceAtLeast,
  };
}

/** The chance that a stock covers all of a route's demand is at least this (Boole's inequality). */
export function coversAtLeast(demand: Demand, counts: ReadonlyMap<string, number>): number {
  const short = [...demand].map(([part, pmf]) => tails(pmf)[counts.get(part) ?? 0] ?? 0);
  return Math.max(0, 1 - sum(short));
}
