import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { poissonBinomial, stockFor, tails } from '../../../src/diagnosis/demand.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { many, whole } from './support/models.ts';

/** Every outcome of the trials, one by one. */
function enumerated(p: readonly number[]): number[] {
  const pmf = many(p.length + 1, () => 0);
  for (let outcome = 0; outcome < 2 ** p.length; outcome++) {
    let chance = 1;
    let count = 0;
    for (const [bit, one] of p.entries()) {
      const success = (outcome >>> bit) & 1;
      chance *= success ? one : 1 - one;
      count += success;
    }
    pmf[count] = (pmf[count] ?? 0) + chance;
  }
  return pmf;
}

/** n over k. */
function choose(n: number, k: number): number {
  return many(k, (index) => (n - index) / (index + 1)).reduce((a, b) => a * b, 1);
}

describe('Poisson-binomial', () => {
  test('equals the sum over all outcomes, on 300 random sets of trials', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seeded(seed);
      const p = many(whole(0, 10, random), random);
      const exact = enumerated(p);
      const ours = poissonBinomial(p);
      expect(ours).toHaveLength(exact.length);
      for (const [k, chance] of exact.entries())
        expect(ours[k], `seed ${seed}`).toBeCloseTo(chance, 13);
    }
  });

  test.each([
    [5, 0.5],
    [12, 0.1],
    [40, 0.93],
  ])('%d equal trials of %d: the binomial', (n, p) => {
    const pmf = poissonBinomial(many(n, () => p));
    expect(pmf).toHaveLength(n + 1);
    for (const [k, chance] of pmf.entries())
      expect(chance).toBeCloseTo(choose(n, k) * p ** k * (1 - p) ** (n - k), 13);
  });

  test('certain trials and impossible ones', () => {
    expect(poissonBinomial([])).toEqual([1]);
    expect(poissonBinomial([1, 0, 1])).toEqual([0, 0, 1, 0]);
  });

  test('500 trials: mean and variance are the sums of p and p(1 − p), for any chances', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 1, maxLength: 500 }),
        (p) => {
          const pmf = poissonBinomial(p);
          const total = (of: readonly number[]) => of.reduce((a, b) => a + b, 0);
          const mean = total(pmf.map((chance, k) => k * chance));
          expect(total(pmf)).toBeCloseTo(1, 10);
          expect(mean).toBeCloseTo(total(p), 8);
          expect(total(pmf.map((chance, k) => (k - mean) ** 2 * chance))).toBeCloseTo(
            total(p.map((one) => one * (1 - one))),
            7,
          );
        },
      ),
      { numRuns: 50 },
    );
  });
});

describe('tails and stock', () => {
  test('the tail beyond k, down to the smallest chances', () => {
    const p = 1e-6;
    const [, , beyondTwo = NaN] = tails(poissonBinomial([p, p, p]));
    // All three: 1e-18, which 1 minus the rest would round to 0.
    expect(beyondTwo / p ** 3).toBeCloseTo(1, 12);
  });

  test('the smallest stock that covers the demand', () => {
    // Two fair coins: 1/4, 1/2, 1/4.
    const pmf = poissonBinomial([0.5, 0.5]);
    expect([0.2, 0.25, 0.26, 0.75, 0.76, 1].map((chance) => stockFor(pmf, chance))).toEqual([
      0, 0, 1, 1, 2, 2,
    ]);
  });
});
