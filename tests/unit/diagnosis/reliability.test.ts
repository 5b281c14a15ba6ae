import { expect, test } from 'vitest';
import { reliability, wilson } from '../../../src/diagnosis/reliability.ts';

test('Wilson intervals, worked by hand', () => {
  // 5 of 10: 0.5 ± 1.96 · √(0.025 + 0.009604) / 1.38416.
  expect(wilson(5, 10).low).toBeCloseTo(0.2366, 4);
  expect(wilson(5, 10).high).toBeCloseTo(0.7634, 4);
  expect(wilson(0, 10).low).toBeCloseTo(0, 12);
  // 1.96² / (10 + 1.96²).
  expect(wilson(0, 10).high).toBeCloseTo(0.2775, 4);
  expect(wilson(10, 10).high).toBeCloseTo(1, 12);
});

test('claims are counted in the band they lie in, a claim of 1 in the last', () => {
  const told = reliability([
    { claimed: 0.41, right: true },
    { claimed: 0.49, right: false },
    { claimed: 1, right: true },
  ]);
  expect(told.map(({ from, visits, right }) => [from, visits, right])).toEqual([
    [0.4, 2, 1],
    [0.9, 1, 1],
  ]);
  expect(told[0]?.claimed).toBeCloseTo(0.45, 12);
});
