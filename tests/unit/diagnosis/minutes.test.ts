import { describe, expect, test } from 'vitest';
import {
  meanMinutes,
  minutesFor,
  minutesOf,
  together,
  type Minutes,
} from '../../../src/diagnosis/minutes.ts';
import { inOneGo } from '../../../src/diagnosis/numbers.ts';
import { plan } from '../../../src/diagnosis/plan.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { many, whole } from './support/models.ts';
import { realModel, told } from './support/real.ts';

function randomMinutes(seed: number): Minutes {
  const random = seeded(seed);
  const weights = many(whole(1, 6, random), () => (random() < 0.3 ? 0 : random()));
  const all = weights.reduce((a, b) => a + b, 0) || 1;
  return {
    from: whole(0, 9, random),
    chances: Float64Array.from(weights, (weight) =>
      all === 1 ? 1 / weights.length : weight / all,
    ),
  };
}

/** Every combination of minutes with its chance, one by one. */
function outcomes(all: readonly Minutes[]): { minutes: number; chance: number }[] {
  return all.reduce(
    (sums, { from, chances }) =>
      sums.flatMap((sum) =>
        [...chances].map((chance, more) => ({
          minutes: sum.minutes + from + more,
          chance: sum.chance * chance,
        })),
      ),
    [{ minutes: 0, chance: 1 }],
  );
}

describe('minutes until the fault is found', () => {
  const model = realModel();
  const evidence = told('since.over-4', 'near.quiet', 'listen.click');

  test('have the plan’s expected minutes as their mean', () => {
    const { best } = plan(model, evidence);
    const minutes = minutesOf(best);
    expect([...minutes.chances].reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
    // The published figures are whole minutes, so nothing was rounded up.
    expect(meanMinutes(minutes)).toBeCloseTo(best.expectedMinutes, 9);
  });

  test('the quantile is the first time at which so many are found', () => {
    const steps = [
      { minutes: 10, reached: 1 },
      { minutes: 2.5, reached: 0.5 },
      { minutes: 20, reached: 0.1 },
    ].map((step) => ({ ...step, check: 'c' as never, opens: [] }));
    const minutes = minutesOf({ steps, expectedMinutes: 0 });
    // Found after 10 minutes with 0.5, after 13 (2.5 counts as 3) with 0.9, after 33 always.
    expect([0.5, 0.51, 0.9, 0.91, 1].map((chance) => minutesFor(minutes, chance))).toEqual([
      10, 13, 13, 33, 33,
    ]);
  });

  test('no step takes no time', () => {
    expect(minutesFor(minutesOf({ steps: [], expectedMinutes: 0 }), 0.9)).toBe(0);
  });
});

describe('the minutes of several visits', () => {
  test('equal the sum over all outcomes, on 200 random days', () => {
    for (let seed = 1; seed <= 200; seed++) {
      const day = many(whole(0, 5, seeded(seed)), (index) => randomMinutes(31 * seed + index));
      const all = outcomes(day);
      const sum = inOneGo(together(day));
      for (const [more, chance] of sum.chances.entries())
        expect(chance, `seed ${seed}`).toBeCloseTo(
          all
            .filter(({ minutes }) => minutes === sum.from + more)
            .reduce((a, one) => a + one.chance, 0),
          11,
        );
      const enough = minutesFor(sum, 0.9);
      const within = (most: number) =>
        all.filter(({ minutes }) => minutes <= most).reduce((a, one) => a + one.chance, 0);
      expect(within(enough), `seed ${seed}`).toBeGreaterThanOrEqual(0.9 - 1e-8);
      expect(within(enough - 1), `seed ${seed}`).toBeLessThan(0.9 + 1e-8);
    }
  });

  test('many alike follow the binomial: 400 visits of 10 minutes or 11', () => {
    const one = { from: 10, chances: Float64Array.of(0.5, 0.5) };
    const sum = inOneGo(together(many(400, () => one)));
    expect(meanMinutes(sum)).toBeCloseTo(4200, 6);
    // 200 + 1.2816 · 10 = 212.8 by the normal's table; the binomial's own 0.9 quantile is 213.
    expect(minutesFor(sum, 0.9)).toBe(4213);
  });
});
