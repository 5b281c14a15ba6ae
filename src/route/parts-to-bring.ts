/** What to load for a whole route: parts by model visit by visit, all others as one stock. */
import { poissonBinomial, stockFor } from '../diagnosis/demand.ts';
import { at, inOneGo, sum } from '../diagnosis/numbers.ts';
import { carrying, loadFor, metBy } from '../diagnosis/parts.ts';
import type { Model, PartId } from '../diagnosis/types.ts';

/** A visit: the figures of its guide, and the share of each fault in their order. */
export interface RouteVisit {
  readonly model: Model;
  readonly shares: readonly number[];
}

export interface PartsToBring {
  /** Parts that fit any range, one stock for all visits; the part needed most first. */
  readonly stock: readonly {
    readonly part: PartId;
    /** How many the visits are expected to need. */
    readonly mean: number;
    readonly count: number;
  }[];
  /** The parts along for one visit alone. Alike visits share their figures. */
  readonly own: ReadonlyMap<RouteVisit, readonly PartId[]>;
  /** Expected share of the visits that need no second one, exact for this order; 1 without a visit. */
  readonly chance: number;
}

/** A repair that a visit can come to with its own parts along, and what it takes of the stock. */
interface Repair {
  readonly share: number;
  readonly takes: readonly PartId[];
}

/** Repairs alike in what they take, together; one that needs a part that is not along is not begun. */
function repairsOf(
  { model, shares }: RouteVisit,
  own: readonly PartId[],
  there: ReadonlySet<PartId>,
): Repair[] {
  const met = metBy(model, own);
  const repairs = new Map<string, Repair>();
  for (const [fault, { parts, unlisted }] of model.faults.entries()) {
    const takes = parts.filter((part) => !met.has(part));
    if (unlisted || takes.some((part) => !there.has(part))) continue;
    const key = takes.toSorted().join();
    repairs.set(key, { takes, share: (repairs.get(key)?.share ?? 0) + at(shares, fault) });
  }
  return [...repairs.values()];
}

/**
 * For each visit, in their order, the chance that a piece of each of some parts is still there.
 * No visit tells about another; each takes of what its repair needs whatever is there.
 */
function stillThere(
  parts: readonly PartId[],
  visits: readonly (readonly Repair[])[],
  stock: ReadonlyMap<PartId, number>,
): number[] {
  // How many pieces of each part are gone: one digit a part, the last of which means all.
  const digits = parts.map((part) => (stock.get(part) ?? 0) + 1);
  const place = digits.map((_, index) => digits.slice(0, index).reduce((a, b) => a * b, 1));
  const digit = (state: number, index: number) =>
    Math.floor(state / at(place, index)) % at(digits, index);
  let states = new Float64Array(digits.reduce((a, b) => a * b, 1));
  states[0] = 1;
  return visits.map((repairs) => {
    const next = new Float64Array(states.length);
    let free = 0;
    for (const [state, chance] of states.entries()) {
      if (chance === 0) continue;
      if (parts.every((_, index) => digit(state, index) < at(digits, index) - 1)) free += chance;
      let rest = chance;
      for (const { share, takes } of repairs) {
        const moved = parts.reduce(
          (to, part, index) =>
            takes.includes(part) && digit(state, index) < at(digits, index) - 1
              ? to + at(place, index)
              : to,
          state,
        );
        if (moved === state) continue;
        next[moved] = at(next, moved) + chance * share;
        rest -= chance * share;
      }
      next[state] = at(next, state) + rest;
    }
    states = next;
    return free;
  });
}

/** The expected number of visits that need no second one. */
function* finishes(
  visits: readonly (readonly Repair[])[],
  stock: ReadonlyMap<PartId, number>,
): Generator<undefined, number> {
  const sets = new Map(visits.flat().map(({ takes }) => [takes.toSorted().join(), takes]));
  const there = new Map<string, number[]>();
  for (const [key, set] of sets) {
    there.set(key, stillThere(set, visits, stock));
    yield;
  }
  return sum(
    visits.flatMap((repairs, visit) =>
      repairs.map(
        ({ share, takes }) => share * at(there.get(takes.toSorted().join()) ?? [], visit),
      ),
    ),
  );
}

/** How many of each part that fits any range are worth their cost, and how many are needed. */
function stockOf(visits: readonly RouteVisit[], repairs: readonly (readonly Repair[])[]) {
  // A further piece saves a second visit with the chance that more are needed than are there.
  const enough = new Map<PartId, number>(
    visits.flatMap(({ model }) =>
      model.parts
        .filter(({ fits }) => fits === 'any')
        .map((part) => [part.id, 1 - carrying(model, part) / model.costs.secondVisit] as const),
    ),
  );
  return [...enough].map(([part, chance]) => {
    const needs = repairs.map((list) =>
      sum(list.map(({ share, takes }) => (takes.includes(part) ? share : 0))),
    );
    return { part, mean: sum(needs), count: stockFor(poissonBinomial(needs), chance) };
  });
}

interface Alone {
  readonly own: readonly PartId[];
  readonly repairs: Repair[];
}

/** What is along for a visit alone, by the parts that are there anyway: worked out once. */
export type KnownVisits = WeakMap<RouteVisit, Map<string, Alone>>;

function aloneOf(visit: RouteVisit, there: ReadonlySet<PartId>, known: KnownVisits): Alone {
  const before = known.get(visit) ?? new Map<string, Alone>();
  known.set(visit, before);
  const key = [...there].join();
  let found = before.get(key);
  if (!found) {
    const own = loadFor(visit.model, visit.shares, { fits: 'model', aboard: there }).parts;
    found = { own, repairs: repairsOf(visit, own, there) };
    before.set(key, found);
  }
  return found;
}

/**
 * The load of a route, by the rule of a single visit: a part is along while what it saves exceeds
 * what it costs. A part that fits by model is along for one visit, those that fit any range serve
 * whichever visit needs them first: of each so many that one more would save less than it costs
 * (the newsvendor's critical fractile). Exact for each visit and each part by itself; a repair that
 * needs both kinds counts on the other being there.
 *
 * In pieces, so that a page can answer between them.
 *
 * @param visits in the order of the day
 * @param known what was worked out before of visits that are still there
 */
export function* partsInPieces(
  visits: readonly RouteVisit[],
  known: KnownVisits = new WeakMap(),
): Generator<undefined, PartsToBring> {
  let there: ReadonlySet<PartId> = new Set(
    visits.flatMap(({ model }) =>
      model.parts.flatMap(({ id, fits }) => (fits === 'any' ? id : [])),
    ),
  );
  for (;;) {
    const repairs: Repair[][] = [];
    for (const visit of visits) {
      repairs.push(aloneOf(visit, there, known).repairs);
      yield;
    }
    const stock = stockOf(visits, repairs).filter(({ count }) => count > 0);
    // What is not worth a piece is not counted on any more: fewer each time.
    if (stock.length === there.size) {
      const pieces = new Map(stock.map(({ part, count }) => [part, count]));
      return {
        stock: stock.toSorted((a, b) => b.mean - a.mean),
        own: new Map(visits.map((visit) => [visit, aloneOf(visit, there, known).own])),
        chance: visits.length > 0 ? (yield* finishes(repairs, pieces)) / visits.length : 1,
      };
    }
    there = new Set(stock.map(({ part }) => part));
  }
}

/** The same in one go. */
export const partsToBring = (visits: readonly RouteVisit[], known?: KnownVisits): PartsToBring =>
  inOneGo(partsInPieces(visits, known));
