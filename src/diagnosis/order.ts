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

/** The sets of checks that some order comes to, each after every smaller one. */
interface Reachable {
  readonly sets: readonly number[];
  /** By set: its place in `sets`, for sets that are in it. */
  readonly place: Int32Array;
  /** By place: the faults found, and the access open. */
  readonly found: readonly number[];
  readonly open: readonly number[];
}

/**
 * From the empty set up, a check more each time, so that only sets are looked at that keep to what
 * the checks wait for: with the waits of `withChains` some 2,000 of 32,768.
 */
function reachable({ checks, opened }: Search, after: readonly number[], target: number) {
  const all = 2 ** checks.length - 1;
  const [sets, found, open] = [[0], [0], [opened]];
  const place = new Int32Array(all + 1);
  const finds = Int32Array.from(checks, (one) => one.finds);
  const access = Int32Array.from(checks, (one) => one.access);
  const waits = Int32Array.from(after);
  // Typed arrays are read directly: this loop runs up to 2^checks · checks times.
  for (let index = 0; index < sets.length; index++) {
    const set = sets[index] ?? 0;
    const has = found[index] ?? 0;
    if (without(target, has) === 0) continue;
    for (let rest = all & ~set; rest !== 0; rest &= rest - 1) {
      const check = lowestBit(rest);
      const more = set | (1 << check);
      if (without(waits[check] ?? 0, set) !== 0 || (place[more] ?? 0) !== 0) continue;
      place[more] = sets.length;
      sets.push(more);
      found.push(has | (finds[check] ?? 0));
      open.push((open[index] ?? 0) | (access[check] ?? 0));
    }
  }
  return { sets, place, found, open } satisfies Reachable;
}

/**
 * An order with the least expected minutes, by dynamic programming over sets:
 * what is still to spend depends only on which checks are done, not on their
 * order. Time and space grow as 2^checks; at most 16 checks and 31 faults.
 * Ends with the check after which nothing is left to find.
 */
export function bestOrder(search: Search): number[] {
  const { checks, access, shares } = search;
  if (checks.length > MOST_CHECKS) throw new RangeError(`more than ${MOST_CHECKS} checks`);
  const target = findable(search);
  const after = withChains(search);
  const { sets, place, found, open } = reachable(search, after, target);
  const opening = subsetSums(access);
  const minutes = Float64Array.from(checks, (one) => one.minutes);
  const needs = Int32Array.from(checks, (one) => one.access);
  const waits = Int32Array.from(after);
  const all = 2 ** checks.length - 1;
  const toGo = new Float64Array(sets.length);
  const next = new Int8Array(sets.length).fill(-1);
  // The larger sets first.
  for (let index = sets.length - 1; index >= 0; index--) {
    const set = sets[index] ?? 0;
    const left = without(target, found[index] ?? 0);
    if (left === 0) continue;
    const shut = ~(open[index] ?? 0);
    let chance = 0;
    for (let rest = left; rest !== 0; rest &= rest - 1) chance += shares[lowestBit(rest)] ?? 0;
    let best = Infinity;
    for (let rest = all & ~set; rest !== 0; rest &= rest - 1) {
      const check = lowestBit(rest);
      if (without(waits[check] ?? 0, set) !== 0) continue;
      const step = (minutes[check] ?? 0) + (opening[(needs[check] ?? 0) & shut] ?? 0);
      const total = step * chance + (toGo[place[set | (1 << check)] ?? 0] ?? 0);
      if (total < best) {
        best = total;
        next[index] = check;
      }
    }
    toGo[index] = best;
  }
  const order: number[] = [];
  for (let set = 0, check = at(next, 0); check >= 0; check = at(next, at(place, set))) {
    order.push(check);
    set |= 1 << check;
  }
  return order;
}
