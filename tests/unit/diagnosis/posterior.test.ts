import { describe, expect, test } from 'vitest';
import { informative, posterior, shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import type { Random } from '../../../src/diagnosis/random.ts';
import { many, modelOf, whole } from './support/models.ts';
import type { Plain } from './support/models.ts';
import { given, realModel, told } from './support/real.ts';

/** A ratio of whole numbers, to more places than a double holds. */
function ratio(part: bigint, all: bigint): number {
  const shift = 200n;
  return Number((part << shift) / all) / 2 ** Number(shift);
}

/**
 * The shares without a logarithm and without a rounding: every joint probability
 * as a whole number of the common denominator.
 */
function bruteForce(plain: Plain, answers: readonly number[]): number[] {
  const joint = plain.priors.map((prior, fault) =>
    answers.reduce((product, answer, question) => {
      const rows = plain.questions?.[question] ?? [];
      const row = rows[fault] ?? [];
      // Other faults' row sums, so that all joints have one denominator.
      const others = rows.filter((_, other) => other !== fault);
      const rest = others.reduce((a, one) => a * BigInt(one.reduce((x, y) => x + y, 0)), 1n);
      return product * BigInt(row[answer] ?? 0) * rest;
    }, BigInt(prior)),
  );
  const all = joint.reduce((a, b) => a + b, 0n);
  return joint.map((one) => ratio(one, all));
}

function randomPlain(random: Random): Required<Pick<Plain, 'priors' | 'questions'>> {
  const faults = whole(2, 12, random);
  // Down to 1 in 1000, so that shares from near 0 to near 1 come up.
  const figure = () => Math.ceil(1000 ** random());
  return {
    priors: many(faults, figure),
    questions: many(whole(1, 10, random), () => {
      const answers = whole(2, 5, random);
      return many(faults, () => many(answers, figure));
    }),
  };
}

function randomCase(random: Random) {
  const plain = randomPlain(random);
  const answers = plain.questions.map((rows) => whole(0, (rows[0] ?? []).length - 1, random));
  const evidence = given(...answers.map((answer, question) => `q${question}.a${answer}`));
  return { plain, answers, evidence, model: modelOf(plain) };
}

describe('posterior', () => {
  test('equals exact whole-number arithmetic on 1,000 random models, relative error below 1e-12', () => {
    let compared = 0;
    let worst = 0;
    for (let seed = 1; seed <= 1000; seed++) {
      const { plain, answers, evidence, model } = randomCase(seeded(seed));
      const exact = bruteForce(plain, answers);
      const ours = shares(model, evidence);
      expect(ours).toHaveLength(exact.length);
      for (const [fault, share] of exact.entries()) {
        const error = Math.abs((ours[fault] ?? NaN) - share) / share;
        if (!(error < 1e-12)) throw new Error(`seed ${seed}, fault ${fault}: off by ${error}`);
        worst = Math.max(worst, error);
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(5000);
    // Rounding there must be: an error of 0 would mean that nothing was compared.
    expect(worst).toBeGreaterThan(0);
  });

  test('prior log-odds and all weights give the posterior log-odds, in decibans', () => {
    const decibans = (share: number, others: number) => 10 * Math.log10(share / others);
    let compared = 0;
    for (let seed = 1; seed <= 200; seed++) {
      const { plain, answers, evidence, model } = randomCase(seeded(seed));
      const exact = bruteForce(plain, answers);
      const all = plain.priors.reduce((a, b) => a + b, 0);
      for (const { fault, weights } of posterior(model, evidence)) {
        const index = model.faults.findIndex(({ id }) => id === fault);
        const prior = plain.priors[index] ?? NaN;
        const others = exact.reduce((a, share, other) => (other === index ? a : a + share), 0);
        const sum = weights.reduce((a, weight) => a + weight.decibans, 0);
        expect(decibans(prior, all - prior) + sum, `seed ${seed}`).toBeCloseTo(
          decibans(exact[index] ?? NaN, others),
          8,
        );
        compared++;
      }
    }
    expect(compared).toBeGreaterThan(1000);
  });

  test('answers in another order change the weights, never the shares', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const { evidence, model } = randomCase(seeded(seed));
      const [there, back] = [shares(model, evidence), shares(model, evidence.toReversed())];
      for (const [fault, share] of there.entries())
        expect(back[fault], `seed ${seed}`).toBeCloseTo(share, 12);
    }
  });

  test('without informative answers the shares are the priors', () => {
    const model = realModel();
    const nothing = given('display.unsure', 'nowhere.yes', 'power.back', 'check.nothing.open');
    expect(informative(model, nothing)).toEqual([]);
    for (const [fault, share] of shares(model, nothing).entries())
      expect(share).toBeCloseTo(model.faults[fault]?.prior ?? NaN, 14);
  });

  test('lists the likeliest first, with one weight for each informative answer', () => {
    const model = realModel();
    const evidence = told('since.over-4', 'near.unsure', 'listen.click');
    const list = posterior(model, evidence);
    expect(list.map(({ fault }) => fault).toSorted()).toEqual(
      model.faults.map(({ id }) => id).toSorted(),
    );
    for (const [index, { share, weights }] of list.entries()) {
      expect(share).toBeLessThanOrEqual(list[index - 1]?.share ?? 1);
      expect(weights.map(({ key }) => key)).toEqual(['complaint', 'door-locked/since', 'listen']);
    }
    expect(list.reduce((sum, { share }) => sum + share, 0)).toBeCloseTo(1, 14);
  });

  test('stands a thousand answers: no share becomes NaN, none overflows', () => {
    const model = modelOf({
      priors: [1, 1],
      questions: many(1000, () => [
        [999, 1],
        [1, 999],
      ]),
    });
    const evidence = given(...many(1000, (question) => `q${question}.a0`));
    const [first = NaN, second = NaN] = shares(model, evidence);
    expect(first).toBe(1);
    expect(second).toBeGreaterThanOrEqual(0);
  });

  test('a result of a check counts as an answer', () => {
    const model = modelOf({ priors: [1, 1], checks: [{ minutes: 1, finds: [0] }] });
    for (const [answer, share] of [
      ['found', 0.9],
      ['clear', 0.1],
    ] as const)
      expect(shares(model, given(`check.c0.${answer}`))[0]).toBeCloseTo(share, 14);
  });
});
