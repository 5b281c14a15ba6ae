import type { Route } from './plan.ts';

/** How many minutes something takes: element m is P(m minutes), m a whole number. */
export interface Minutes {
  /** The first element's number of minutes. */
  readonly from: number;
  readonly chances: Float64Array;
}

/** Chances that are together smaller than this are not carried on at the ends of a sum. */
const NOTHING = 1e-12;

/**
 * When the fault is found on a route, given that one of its checks finds it. Steps are counted
 * in whole minutes, a part of one as a whole. A route without a step takes no time.
 */
export function minutesOf({ steps }: Route): Minutes {
  const found: (readonly [minutes: number, chance: number])[] = [];
  let clock = 0;
  for (const [index, { minutes, reached }] of steps.entries()) {
    clock += Math.ceil(minutes);
    found.push([clock, reached - (steps[index + 1]?.reached ?? 0)]);
  }
  const [first] = found[0] ?? [0];
  const chances = new Float64Array(clock - first + 1);
  for (const [minutes, chance] of found) chances[minutes - first] = chance;
  if (found.length === 0) chances[0] = 1;
  return { from: first, chances };
}

/**
 * The minutes of several visits together, which do not tell about one another: convolution.
 * What is cut off at the short end is counted at the shortest time kept, and what is cut off at the
 * long end at the longest, so that the whole stays 1. In pieces, a visit each.
 */
export function* together(all: readonly Minutes[]): Generator<undefined, Minutes> {
  let sum: Minutes = { from: 0, chances: Float64Array.of(1) };
  for (const one of all) {
    sum = cut(convolved(sum, one));
    yield;
  }
  return sum;
}

function convolved(a: Minutes, b: Minutes): Minutes {
  const chances = new Float64Array(a.chances.length + b.chances.length - 1);
  for (const [more, chance] of b.chances.entries()) {
    if (chance === 0) continue;
    // Typed arrays are read directly: this loop runs millions of times for a long route.
    for (let i = 0; i < a.chances.length; i++)
      chances[i + more] = (chances[i + more] ?? 0) + (a.chances[i] ?? 0) * chance;
  }
  return { from: a.from + b.from, chances };
}

function cut({ from, chances }: Minutes): Minutes {
  let [first, last] = [0, chances.length - 1];
  let [below, above] = [0, 0];
  while (first < last && below + (chances[first] ?? 0) < NOTHING) below += chances[first++] ?? 0;
  while (last > first && above + (chances[last] ?? 0) < NOTHING) above += chances[last--] ?? 0;
  const kept = chances.slice(first, last + 1);
  kept[0] = (kept[0] ?? 0) + below;
  kept[kept.length - 1] = (kept.at(-1) ?? 0) + above;
  return { from: from + first, chances: kept };
}

/** The mean. */
export function meanMinutes({ from, chances }: Minutes): number {
  return chances.reduce((mean, chance, more) => mean + (from + more) * chance, 0);
}

/** Rounding of sums of shares: a chance wanted as 1 may come out a little below it. */
const ROUNDING = 1e-9;

/** The fewest minutes that are enough with at least this chance: the quantile. */
export function minutesFor({ from, chances }: Minutes, chance: number): number {
  let sum = 0;
  const enough = chances.findIndex((one) => (sum += one) >= chance - ROUNDING);
  return from + (enough < 0 ? chances.length - 1 : enough);
}
