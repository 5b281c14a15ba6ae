import { describe, expect, test } from 'vitest';
import { bestOrder, expectedMinutes, stepsOf } from '../../../src/diagnosis/order.ts';
import type { Search } from '../../../src/diagnosis/order.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { cases } from '../../support/sample.ts';
import { many, whole } from './support/models.ts';
import { leastMinutes, randomSearch } from './support/orders.ts';
import { likeliestFirst } from './support/habits.ts';

function closeTo(found: number, wanted: number, name: string): void {
  if (!(Math.abs(found - wanted) <= 1e-9 * Math.max(1, wanted)))
    throw new Error(`${name}: ${found} minutes instead of ${wanted}`);
}

/** Checks that need no access, each for one fault of its own. */
const plainSearch = (p: readonly number[], minutes: readonly number[]): Search => ({
  shares: p,
  access: [],
  opened: 0,
  checks: minutes.map((one, index) => ({ minutes: one, access: 0, finds: 1 << index, after: 0 })),
});

describe('the best order', () => {
  // A slip that shows in 1 of 200 searches comes up; with EVERY=1, in 1 of 670.
  const searches = cases(600, 2000);

  test('costs no more than any order, on random searches with shared access', () => {
    let orders = 0;
    let shared = 0;
    let ratioFails = 0;
    for (let seed = 1; seed <= searches; seed++) {
      const random = seeded(seed);
      const checks = 2 + (seed % 7);
      const tangled = seed % 2 === 0;
      const groups = whole(1, 4, random);
      const faults = tangled ? whole(1, 12, random) : checks;
      const search = randomSearch({ checks, faults, groups, tangled }, random);
      const exact = leastMinutes(search);
      const order = bestOrder(search);
      closeTo(expectedMinutes(search, order), exact.minutes, `seed ${seed}`);
      orders += exact.orders;
      if (search.checks.some((a, i) => search.checks.some((b, j) => i < j && a.access & b.access)))
        shared++;
      if (!tangled) {
        const worse = expectedMinutes(search, byRatio(search)) > exact.minutes + 1e-9;
        ratioFails += worse ? 1 : 0;
      }
      for (const [place, check] of order.entries())
        for (const [other] of search.checks.entries())
          if (((search.checks[check]?.after ?? 0) >>> other) & 1)
            expect(order.slice(0, place), `seed ${seed}`).toContain(other);
    }
    expect(orders).toBeGreaterThan(2500 * searches);
    expect(shared).toBeGreaterThan(searches / 2);
    // Shared access is what the search is for: without it the ratio would do.
    expect(ratioFails).toBeGreaterThan(searches / 10);
  });

  test('is the order of minutes per probability when no access is shared', () => {
    for (let seed = 1; seed <= 500; seed++) {
      const random = seeded(seed);
      const count = whole(2, 12, random);
      const weights = many(count, () => random() + 0.01);
      const total = weights.reduce((a, b) => a + b, 0);
      const search = plainSearch(
        weights.map((one) => one / total),
        many(count, () => whole(1, 30, random)),
      );
      // Ratios of random reals never tie, so the order itself is one and only.
      expect(bestOrder(search), `seed ${seed}`).toEqual(byRatio(search));
    }
  });

  test('takes 16 checks and refuses 17', () => {
    const search = (count: number) =>
      plainSearch(
        many(count, () => 1 / count),
        many(count, () => 1),
      );
    expect(bestOrder(search(16))).toHaveLength(16);
    expect(() => bestOrder(search(17))).toThrow(RangeError);
  });

  test('ends when nothing is left to find', () => {
    const search: Search = {
      ...plainSearch([0.5, 0.5], [1, 1]),
      checks: [
        { minutes: 1, access: 0, finds: 0b11, after: 0 },
        { minutes: 9, access: 0, finds: 0b10, after: 0 },
        { minutes: 9, access: 0, finds: 0, after: 0 },
      ],
    };
    expect(bestOrder(search)).toEqual([0]);
    expect(bestOrder({ ...search, checks: [] })).toEqual([]);
  });

  test('makes a check that finds nothing when another waits for it', () => {
    const search: Search = {
      shares: [1],
      access: [],
      opened: 0,
      checks: [
        { minutes: 5, access: 0, finds: 1, after: 0b10 },
        { minutes: 2, access: 0, finds: 0, after: 0 },
      ],
    };
    expect(bestOrder(search)).toEqual([1, 0]);
    expect(expectedMinutes(search, [1, 0])).toBe(7);
  });
});

/** Minutes per probability, the smaller first, access counted as if opened for each alone. */
function byRatio({ checks, shares, access, opened }: Search): number[] {
  const ratio = (index: number) => {
    const check = checks[index];
    const opening = access.reduce(
      (all, one, bit) => ((((check?.access ?? 0) & ~opened) >>> bit) & 1 ? all + one : all),
      0,
    );
    return ((check?.minutes ?? 0) + opening) / (shares[index] ?? 0);
  };
  return [...checks.keys()].sort((a, b) => ratio(a) - ratio(b));
}

describe('what an order costs', () => {
  const search: Search = {
    // Halves and quarters, which a double holds exactly.
    shares: [0.5, 0.25, 0.25],
    access: [10, 4],
    opened: 0,
    checks: [
      { minutes: 3, access: 0b01, finds: 0b001, after: 0 },
      { minutes: 2, access: 0b11, finds: 0b010, after: 0 },
      { minutes: 1, access: 0, finds: 0b100, after: 0 },
    ],
  };

  test('access is counted by the first check that needs it, and once', () => {
    expect(stepsOf(search, [0, 1, 2])).toEqual([
      { check: 0, minutes: 13, opens: 0b01, reached: 1 },
      { check: 1, minutes: 6, opens: 0b10, reached: 0.5 },
      { check: 2, minutes: 1, opens: 0, reached: 0.25 },
    ]);
    // By hand: 13 + 0.5 · 6 + 0.25 · 1.
    expect(expectedMinutes(search, [0, 1, 2])).toBe(16.25);
  });

  test('what is open already costs nothing', () => {
    expect(expectedMinutes({ ...search, opened: 0b11 }, [0, 1, 2])).toBe(4.25);
  });

  test('likeliest first takes what finds most of what is left', () => {
    expect(likeliestFirst(search)).toEqual([0, 1, 2]);
    const [first, second, third] = search.checks;
    if (!first || !second || !third) throw new Error('three checks');
    const waiting = { ...search, checks: [{ ...first, after: 0b100 }, second, third] };
    expect(likeliestFirst(waiting)).toEqual([2, 0, 1]);
  });
});
