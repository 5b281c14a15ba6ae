import { describe, expect, test } from 'vitest';
import { bestOrder, expectedMinutes } from '../../../src/diagnosis/order.ts';
import type { Search } from '../../../src/diagnosis/order.ts';
import { likeliestFirst } from '../../unit/diagnosis/support/habits.ts';

const search = (p: readonly number[], minutes: readonly number[]): Search => ({
  shares: p,
  access: [],
  opened: 0,
  checks: minutes.map((one, index) => ({ minutes: one, access: 0, finds: 1 << index, after: 0 })),
});

/**
 * Kalagnanam & Henrion, arXiv 1304.2362: with one fault and conclusive checks, the
 * smallest cost per probability first. Figures computed from that rule by hand.
 */
const examples = [
  { p: [0.5, 0.3, 0.2], c: [10, 2, 1], order: [3, 2, 1], minutes: 7.6, likeliest: 11.2 },
  {
    p: [0.4, 0.3, 0.2, 0.1],
    c: [4, 1, 5, 2],
    order: [2, 1, 4, 3],
    minutes: 5.4,
    likeliest: 6.3,
    cheapest: { order: [2, 4, 1, 3], minutes: 5.8 },
  },
  {
    p: [0.35, 0.25, 0.2, 0.15, 0.05],
    c: [20, 5, 10, 3, 1],
    minutes: 20.35,
    likeliest: 27.9,
  },
];

describe('Kalagnanam & Henrion: order of checks', () => {
  test.each(examples)('p $p, minutes $c', ({ p, c, order, minutes, likeliest, cheapest }) => {
    const model = search(p, c);
    const best = bestOrder(model);
    // Ties (the third example has one) leave the order open, the minutes not.
    if (order) expect(best.map((check) => check + 1)).toEqual(order);
    expect(expectedMinutes(model, best)).toBeCloseTo(minutes, 10);
    expect(expectedMinutes(model, likeliestFirst(model))).toBeCloseTo(likeliest, 10);
    if (cheapest)
      expect(
        expectedMinutes(
          model,
          cheapest.order.map((check) => check - 1),
        ),
      ).toBeCloseTo(cheapest.minutes, 10);
  });
});

describe('the trap: a last fault that is inferred, not tested', () => {
  const model = search([0.9, 0.1], [10, 5]);
  /** Minutes when the last check of the order is never made. */
  const inferred = (order: readonly number[]) =>
    expectedMinutes({ ...model, checks: withoutLast(order) }, order);
  const withoutLast = (order: readonly number[]) =>
    model.checks.map((check, index) => (index === order.at(-1) ? { ...check, minutes: 0 } : check));

  test('inferred, the ratio order costs 10 and its reverse 5', () => {
    expect(inferred([0, 1])).toBeCloseTo(10, 12);
    expect(inferred([1, 0])).toBeCloseTo(5, 12);
  });

  test('so the plan performs the last check, and then the ratio order is best', () => {
    expect(bestOrder(model)).toEqual([0, 1]);
    expect(expectedMinutes(model, [0, 1])).toBeCloseTo(10.5, 12);
    expect(expectedMinutes(model, [1, 0])).toBeCloseTo(14, 12);
  });
});
