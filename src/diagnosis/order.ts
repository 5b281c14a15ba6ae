import { withChains } from './chains.ts';
import { at, sum } from './numbers.ts';

/**
 * The order of checks with the least expected minutes, over plain numbers.
 *
 * Assumptions: exactly one fault is present; a check is conclusive for the
 * faults it can find; checking ends when the fault is found; what was opened
 * stays open, so its minutes count once; the last check is performed like any
 * other, never inferred from what is left. (If it were inferred, the best order
 * would be another one.)
 *
 * Sets are bit masks: bit f of a mask of faults is fault f, and so on.
 */
export interface Search {
  /** Probability of each fault. Faults that no check finds never end the search. */
  readonly shares: readonly number[];
  readonly checks: readonly SearchCheck[];
  /** Minutes of each access group. */
  readonly access: readonly number[];
  /** Access groups open already. */
  readonly opened: number;
}

export interface SearchCheck {
  readonly minutes: number;
  /** Mask of the access groups it needs. */
  readonly access: number;
  /** Mask of the faults it finds. */
  readonly finds: number;
  /** Mask of the checks that must come first. */
  readonly after: number;
}

/** One check of an order: what it adds to the visit. */
export interface SearchStep {
  readonly check: number;
  /** Minutes with the access it newly opens. */
  readonly minutes: number;
  /** Mask of the access groups it newly opens. */
  readonly opens: number;
  /** Probability that the fault has not been found before. */
  readonly reached: number;
}

/** The most checks `bestOrder` takes: it visits every set of them. */
export const MOST_CHECKS = 16;

const without = (mask: number, taken: number) => mask & ~taken;
const has = (mask: number, bit: number) => ((mask >>> bit) & 1) === 1;
const lowestBit = (mask: number) => 31 - Math.clz32(mask & -mask);

/** The sum of the values whose bits are set. */
function masked(values: readonly number[], mask: number): number {
  return sum(values.filter((_, bit) => has(mask, bit)));
}

/** Mask of the faults that some check finds. */
function findable(search: Search): number {
  return search.checks.reduce((mask, { finds }) => mask | finds, 0);
}

/** The steps of a given order, up to the check after which nothing is left to find. */
export function stepsOf(search: Search, order: readonly number[]): SearchStep[] {
  const steps: SearchStep[] = [];
  let { opened } = search;
  let left = findable(search);
  for (const check of order) {
    if (left === 0) break;
    const { minutes, access, finds } = at(search.checks, check);
    const opens = without(access, opened);
    const reached = masked(search.shares, left);
    steps.push({ check, opens, reached, minutes: minutes + masked(search.access, opens) });
    opened |= access;
    left = without(left, finds);
  }
  return steps;
}

/** Expected minutes of a given order: each step's minutes times the chance to come to it. */
export function expectedMinutes(search: Search, order: readonly number[]): number {
  return sum(stepsOf(search, order).map(({ minutes, reached }) => minutes * reached));
}

/** Sums over every subset of `values`, indexed by mask. */
function subsetSums(values: readonly number[]): Float64Array {
  const sums = new Float64Array(2 ** values.length);
  for (let mask = 1; mask < sums.length; mask++) {
    sums[mask] = (sums[mask & (mask - 1)] ?? 0) + at(values, lowestBit(mask));
  }
  return sums;
}

/** The union of the checks' masks, for every set of checks. */
function unions(masks: readonly number[], start: number): Int32Array {
  const all = new Int32Array(2 ** masks.length);
  all[0] = start;
  for (let set = 1; set < all.length; set++) {
    all[set] = (all[set & (set - 1)] ?? 0) | at(masks, lowestBit(set));
  }
  return all;
}

/** Probability of the faults each set of checks leaves unfound; exactly 0 when none is left. */
function unfound(search: Search, found: Int32Array): Float64Array {
  const target = findable(search);
  // Two tables of 2^16 sums instead of one of 2^31.
  const low = subsetSums(search.shares.slice(0, 16));
  const high = subsetSums(search.shares.slice(16));
  const rest = new Float64Array(found.length);
  for (let set = 0; set < found.length; set++) {
    const left = without(target, found[set] ?? 0);
    rest[set] = (low[left & 0xffff] ?? 0) + (high[left >>> 16] ?? 0);
  }
  return rest;
}

/**
 * An order with the least expected minutes, by dynamic programming over sets:
 * what is still to spend depends only on which checks are done, not on their
 * order. Time and space grow as 2^checks; at most 16 checks and 31 faults.
 * Ends with the check after which nothing is left to find.
 */
export function bestOrder(search: Search): number[] {
  const { checks, access } = search;
  if (checks.length > MOST_CHECKS) throw new RangeError(`more than ${MOST_CHECKS} checks`);
  const target = findable(search);
  const found = unions(
    checks.map((one) => one.finds),
    0,
  );
  const open = unions(
    checks.map((one) => one.access),
    search.opened,
  );
  const reached = unfound(search, found);
  const opening = subsetSums(access);
  const minutes = Float64Array.from(checks, (one) => one.minutes);
  const needs = Int32Array.from(checks, (one) => one.access);
  const after = withChains(search);
  const before = unions(after, 0);
  const all = 2 ** checks.length - 1;
  const toGo = new Float64Array(all + 1);
  const next = new Int8Array(all + 1).fill(-1);
  // A set is smaller than any set that has one check more, so from the top down.
  // Typed arrays are read directly: this loop runs 2^checks · checks times.
  for (let set = all; set >= 0; set--) {
    if (without(target, found[set] ?? 0) === 0) continue;
    // No order comes to a set that lacks what one of its checks waits for.
    if (without(before[set] ?? 0, set) !== 0) continue;
    const shut = ~(open[set] ?? 0);
    const chance = reached[set] ?? 0;
    let best = Infinity;
    for (let rest = all & ~set; rest !== 0; rest &= rest - 1) {
      const check = lowestBit(rest);
      if (without(after[check] ?? 0, set) !== 0) continue;
      const step = (minutes[check] ?? 0) + (opening[(needs[check] ?? 0) & shut] ?? 0);
      const total = step * chance + (toGo[set | (1 << check)] ?? 0);
      if (total < best) {
        best = total;
        next[set] = check;
      }
    }
    toGo[set] = best;
  }
  const order: number[] = [];
  for (let set = 0, check = at(next, 0); check >= 0; check = at(next, set)) {
    order.push(check);
    set |= 1 << check;
  }
  return order;
}

/**
 * The likeliest fault first: at each step the check that finds the most of what
 * is left, or what that check must wait for. The habit a plan is compared with.
 */
export function likeliestFirst(search: Search): number[] {
  const order: number[] = [];
  let set = 0;
  let left = findable(search);
  const gain = (check: number) => masked(search.shares, at(search.checks, check).finds & left);
  const waiting = (check: number) => without(at(search.checks, check).after, set);
  while (left !== 0) {
    const open = [...search.checks.keys()].filter((check) => !has(set, check));
    const useful = open.filter((check) => (at(search.checks, check).finds & left) !== 0);
    let check = useful.reduce((a, b) => (gain(b) > gain(a) ? b : a));
    while (waiting(check) !== 0) check = 31 - Math.clz32(waiting(check));
    order.push(check);
    set |= 1 << check;
    left = without(left, at(search.checks, check).finds);
  }
  return order;
}
