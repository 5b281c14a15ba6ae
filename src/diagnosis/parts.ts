import { at, sum } from './numbers.ts';
import type { Model, PartId, SparePart } from './types.ts';

export interface Load {
  /** In the model's order. */
  readonly parts: readonly PartId[];
  /** Probability that no second visit is needed; a fault on no list always needs one. */
  readonly chance: number;
  /** Expected, in the firm's money: carrying these parts, and a second visit where it comes to one. */
  readonly cost: number;
}

/** A part weighed: what having it along saves, everything else of a load being along, and costs. */
export interface Weighed {
  readonly part: SparePart;
  /** Probability that the repair needs it. */
  readonly needed: number;
  readonly saves: number;
  readonly costs: number;
}

/** Sets of parts are enumerated: 65,536 at most, a few milliseconds. */
export const MOST_PARTS = 16;
/** A set of needs is kept in the bits of one integer. */
const MOST_NEEDS = 31;
/** Costs nearer to each other than this differ by rounding only. */
const ROUNDING = 1e-9;

/** What having a part along on a visit costs, used or not. */
export function carrying({ costs }: Model, { price }: SparePart): number {
  return price * costs.carrying;
}

/** What a visit of a route may choose from. */
export interface OfRoute {
  /** Parts that are there anyway, at no cost to this visit. */
  readonly aboard: ReadonlySet<PartId>;
  /** Parts of no other kind are chosen. */
  readonly fits: SparePart['fits'] | undefined;
}

const ALONE: OfRoute = { aboard: new Set(), fits: undefined };

/** The needs that parts meet: themselves and what comes with them. */
export function metBy(model: Model, parts: Iterable<PartId>): ReadonlySet<PartId> {
  const along = new Set(parts);
  const covered = model.parts.flatMap(({ id, covers = [] }) => (along.has(id) ? covers : []));
  return new Set([...along, ...covered]);
}

/** Probability that a visit is the last with these needs met. */
export function finishChance(
  model: Model,
  shares: readonly number[],
  met: ReadonlySet<PartId>,
): number {
  return sum(
    model.faults.map(({ parts, unlisted }, fault) =>
      !unlisted && parts.every((part) => met.has(part)) ? at(shares, fault) : 0,
    ),
  );
}

/** Probability that the repair needs a part of which `isNeeded` is true. */
export function needChance(
  model: Model,
  shares: readonly number[],
  isNeeded: (part: PartId) => boolean,
): number {
  return sum(shares.filter((_, fault) => at(model.faults, fault).parts.some(isNeeded)));
}

/** A part, and the probability that the repair needs it. */
export interface PartChance {
  readonly part: PartId;
  readonly chance: number;
}

/** A model's parts, the likeliest first; those that no fault needs are left out. */
export function partChances(model: Model, shares: readonly number[]): PartChance[] {
  return model.parts
    .map(({ id: part }) => ({ part, chance: needChance(model, shares, (need) => need === part) }))
    .filter(({ chance }) => chance > 0)
    .sort((a, b) => b.chance - a.chance);
}

/** Parts to choose from, and what faults need of them, as bits. */
function searchOf(model: Model, shares: readonly number[], { aboard, fits }: OfRoute) {
  // No load makes a part save more than a second visit for every fault that needs anything of it.
  const choices = model.parts
    .filter((part) => !aboard.has(part.id) && (fits ?? part.fits) === part.fits)
    .map((part) => {
      const meets = new Set([part.id, ...(part.covers ?? [])]);
      const most = needChance(model, shares, (need) => meets.has(need) && !aboard.has(need));
      return { part, meets, most: most * model.costs.secondVisit - carrying(model, part) };
    })
    .filter(({ most }) => most > 0)
    .toSorted((a, b) => b.most - a.most)
    .slice(0, MOST_PARTS);
  const needs = [...new Set(choices.flatMap(({ meets }) => [...meets]))].slice(0, MOST_NEEDS);
  const bits = (ids: Iterable<PartId>) =>
    [...ids].reduce((all, id) => all | (1 << needs.indexOf(id)), 0);
  // The shares of faults that need the same parts, together; what no choice meets is left out.
  const wanted = new Map<number, number>();
  for (const [fault, { parts, unlisted }] of model.faults.entries()) {
    const missing = parts.filter((id) => !aboard.has(id));
    if (unlisted || missing.some((id) => !needs.includes(id))) continue;
    const mask = bits(missing);
    wanted.set(mask, (wanted.get(mask) ?? 0) + at(shares, fault));
  }
  return {
    parts: choices.map(({ part }) => part),
    meets: choices.map(({ meets }) => bits([...meets].filter((id) => needs.includes(id)))),
    wanted: [...wanted],
  };
}

/**
 * The parts to load for one visit: those with the least expected cost, carrying them plus
 * P(second visit) × its cost. So a part is along while what it saves exceeds what it costs. Exact,
 * over every set of parts that could be worth it, as repairs that need several parts and parts
 * that come with others make a greedy choice wrong. Ties: no part that makes no difference.
 */
export function loadFor(model: Model, shares: readonly number[], route: OfRoute = ALONE): Load {
  const { parts, meets, wanted } = searchOf(model, shares, route);
  const cost = new Float64Array(2 ** parts.length);
  const met = new Int32Array(cost.length);
  let best = { mask: 0, cost: Infinity };
  for (let mask = 0; mask < cost.length; mask++) {
    if (mask > 0) {
      const rest = mask & (mask - 1);
      const last = 31 - Math.clz32(mask ^ rest);
      cost[mask] = at(cost, rest) + carrying(model, at(parts, last));
      met[mask] = at(met, rest) | at(meets, last);
    }
    let chance = 0;
    for (const [needed, share] of wanted) if ((needed & ~at(met, mask)) === 0) chance += share;
    const all = at(cost, mask) + model.costs.secondVisit * (1 - chance);
    // A set comes after all that are part of it.
    if (all < best.cost - ROUNDING) best = { mask, cost: all };
  }
  const taken = new Set(parts.filter((_, bit) => (best.mask >>> bit) & 1).map(({ id }) => id));
  return {
    parts: model.parts.flatMap(({ id }) => (taken.has(id) ? id : [])),
    chance: finishChance(model, shares, metBy(model, [...route.aboard, ...taken])),
    cost: best.cost,
  };
}

/** Every part that a repair may need, weighed beside a load, the likeliest needed first. */
export function weigh(model: Model, shares: readonly number[], { parts }: Load): Weighed[] {
  const chanceOf = (list: readonly PartId[]) => finishChance(model, shares, metBy(model, list));
  return model.parts
    .map((part) => {
      const others = parts.filter((id) => id !== part.id);
      return {
        part,
        needed: needChance(model, shares, (id) => id === part.id),
        saves: model.costs.secondVisit * (chanceOf([...others, part.id]) - chanceOf(others)),
        costs: carrying(model, part),
      };
    })
    .filter(({ needed }) => needed > 0)
    .toSorted((a, b) => b.needed - a.needed);
}
