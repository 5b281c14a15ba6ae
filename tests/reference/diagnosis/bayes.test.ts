import { describe, expect, test } from 'vitest';
import { posterior, shares } from '../../../src/diagnosis/posterior.ts';
import { modelOf } from '../../unit/diagnosis/support/models.ts';
import { given } from '../../unit/diagnosis/support/real.ts';

const answered = given('q0.a0');

describe("OpenIntro Statistics, Bayes' theorem", () => {
  test('garage: .20/.35/.45 and .70/.25/.05 give .56/.35/.09', () => {
    const model = modelOf({
      priors: [20, 35, 45],
      questions: [
        [
          [70, 30],
          [25, 75],
          [5, 95],
        ],
      ],
    });
    expect(shares(model, answered).map((share) => share.toFixed(2))).toEqual([
      '0.56',
      '0.35',
      '0.09',
    ]);
  });

  test('mammogram: .0035, .89, .07 give .0428', () => {
    const model = modelOf({
      priors: [35, 9965],
      questions: [
        [
          [89, 11],
          [7, 93],
        ],
      ],
    });
    // The book's .0428 comes from rounded steps; the formula gives .042747.
    expect(shares(model, answered)[0]).toBeCloseTo(0.042747, 6);
    expect(Math.abs((shares(model, answered)[0] ?? NaN) - 0.0428)).toBeLessThan(0.0001);
  });
});

describe('computed from the formula', () => {
  test('a rare fault, an answer it always gives and others give 1 time in 20: .019627', () => {
    // .001, 1, .05. In whole numbers an answer cannot be certain: 1 in 1e9 is left.
    const model = modelOf({
      priors: [1, 999],
      questions: [
        [
          [1e9, 1],
          [5, 95],
        ],
      ],
    });
    expect(shares(model, answered)[0]).toBeCloseTo(0.019627, 6);
  });
});

describe('I. J. Good, weight of evidence', () => {
  test.each([
    // From memory: a factor of 10 is a ban, 10 decibans; 2 is 3 decibans; 5/4 is about 1.
    [10, 1, 10],
    [2, 1, 3.0103],
    [5, 4, 0.9691],
    [1, 10, -10],
  ])('a Bayes factor of %d/%d weighs %d decibans', (ours, others, decibans) => {
    const model = modelOf({
      priors: [1, 9],
      questions: [
        [
          [ours, 20 - ours],
          [others, 20 - others],
        ],
      ],
    });
    const weight = posterior(model, answered).find(({ fault }) => fault === 'f0')?.weights[0];
    expect(weight?.decibans).toBeCloseTo(decibans, 4);
  });
});
