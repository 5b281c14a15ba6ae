import { describe, expect, test } from 'vitest';
import { groupsOf, stability } from '../../../src/diagnosis/stability.ts';
import { perturbed } from '../../../src/diagnosis/perturb.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { draw } from './support/simulate.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import type { Evidence, Model } from '../../../src/diagnosis/types.ts';
import { many, modelOf } from './support/models.ts';
import { realModel, told } from './support/real.ts';

const real = realModel();
const evidence = told('since.over-4', 'near.quiet', 'listen.click');

describe('stability', () => {
  test('the same seed gives the same figures, another seed others', () => {
    expect(stability(real, evidence, { draws: 50 })).toEqual(
      stability(real, evidence, { draws: 50 }),
    );
    expect(stability(real, evidence, { draws: 50 })).not.toEqual(
      stability(real, evidence, { draws: 50, seed: 2 }),
    );
  });

  test('a factor of 1 moves nothing where no two answers tell one fact', () => {
    const alone = told('listen.click', 'forced.no');
    const { firstStays, ranges } = stability(real, alone, { draws: 20, factor: 1 });
    expect(firstStays).toBe(1);
    for (const [fault, share] of shares(real, alone).entries()) {
      expect(ranges[fault]?.low).toBeCloseTo(share, 12);
      expect(ranges[fault]?.high).toBeCloseTo(share, 12);
    }
  });

  test('the ranges hold nine draws in ten, and a wider factor widens them', () => {
    const [narrow, wide] = [1.5, 3].map((factor) => stability(real, evidence, { factor }));
    expect(narrow?.ranges).toHaveLength(real.faults.length);
    for (const [fault, { low, high }] of (narrow?.ranges ?? []).entries()) {
      expect(low).toBeLessThan(high);
      expect(wide?.ranges[fault]?.low).toBeLessThan(low);
      expect(wide?.ranges[fault]?.high).toBeGreaterThan(high);
    }
    expect(wide?.firstStays).toBeLessThan(narrow?.firstStays ?? NaN);
  });

  test('two faults alike: each is first in half of the draws', () => {
    const { firstStays, draws } = stability(modelOf({ priors: [1, 1] }), [], { draws: 4000 });
    // Three standard errors of a fair coin.
    expect(Math.abs(firstStays - 0.5)).toBeLessThan((3 * 0.5) / Math.sqrt(draws));
  });

  test('a prior of 2 to 1 keeps its place in 7 draws of 8', () => {
    // First loses when log₂(b/a) of two uniforms on (−1, 1) exceeds 1: a triangle of 1/8.
    const { firstStays, draws } = stability(modelOf({ priors: [2, 1] }), [], { draws: 4000 });
    const error = Math.sqrt(7 / 64 / draws);
    expect(Math.abs(firstStays - 7 / 8)).toBeLessThan(3 * error);
  });

  test('a fault beyond any factor of two stays first always', () => {
    const model = modelOf({ priors: [100, 1, 1] });
    expect(stability(model, []).firstStays).toBe(1);
  });
});

/** Two faults, 5 to 1, and answers of which each speaks 3 to 1 for the second. */
const plain = modelOf({
  priors: [5, 1],
  questions: many(4, () => [
    [1, 3],
    [3, 1],
  ]),
});
const answered = plain.evidence.map(({ key }) => ({ key, answer: 'a0' }));
/** The same four answers, of one hidden fact. */
const tied: Model = {
  ...plain,
  facts: [
    {
      id: 'h',
      values: ['yes', 'no'],
      rows: [
        [0.1, 0.9],
        [0.9, 0.1],
      ],
      rowOf: [0, 1],
    },
  ],
  evidence: plain.evidence.map((table) => ({
    ...table,
    rows: [
      [0.5, 0.5],
      [0.9, 0.1],
      [0.25, 0.75],
    ],
    rowOf: [0, 0],
    rules: [
      { row: 1, if: [[0, [0]]] },
      { row: 2, if: [[0, [1]]] },
    ],
  })),
};

describe('firmness that sees dependence', () => {
  test('groups answers that hang on one fact, or of which one decides what the other tells', () => {
    const keys = (model: Model, given: Evidence) => groupsOf(model, given).map((one) => one.keys);
    expect(keys(plain, answered)).toEqual([['q0'], ['q1'], ['q2'], ['q3']]);
    expect(keys(tied, answered)).toEqual([['q0', 'q1', 'q2', 'q3']]);
    const cure = told('since.never', 'control-lock.went-off', 'try-door.stuck', 'forced.no');
    expect(keys(real, cure)).toContainEqual(['control-lock', 'try-door']);
  });

  test('four answers of one fact are less firm than four that stand by themselves', () => {
    const [apart, one] = [plain, tied].map((model) => stability(model, answered));
    expect(apart?.firstStays).toBeGreaterThan(one?.firstStays ?? NaN);
  });

  test('is never firm where one answer carries the first fault', () => {
    const model = modelOf({
      priors: [20, 1],
      questions: [
        [
          [1, 999],
          [999, 1],
        ],
      ],
    });
    const found = stability(model, [{ key: 'q0', answer: 'a0' }]);
    expect(found).toMatchObject({ degree: 'fairly', restsOn: ['q0'] });
    expect(found.firstStays).toBeGreaterThan(0.95);
    // Two that say so, each enough by itself, are firm.
    const twice = { ...model, evidence: many(2, (n) => ({ ...model.evidence[0], key: `q${n}` })) };
    const both = stability(twice as Model, [
      { key: 'q0', answer: 'a0' },
      { key: 'q1', answer: 'a0' },
    ]);
    expect(both.degree).toBe('firm');
    expect(both.restsOn).toBeUndefined();
  });

  test('the guide a call came to and what was found at the range carry nothing alone', () => {
    const model = modelOf({ priors: [20, 1], checks: [{ minutes: 1, finds: [1] }] });
    const sure: Model = {
      ...model,
      checks: model.checks.map((check) => ({
        ...check,
        likelihoods: [
          [0.999, 0.001],
          [0.001, 0.999],
        ],
      })),
    };
    const found = stability(sure, [{ key: 'check.c0', answer: 'found' }]);
    expect(found.degree).toBe('firm');
  });
});

describe('a perturbed model', () => {
  test('keeps every distribution a distribution, within the factor squared', () => {
    const moved = perturbed(real, 2, seeded(7));
    const rowsOf = ({ faults, facts = [], evidence: tables, checks }: typeof real) => [
      faults.map(({ prior }) => prior),
      ...facts.flatMap(({ rows }) => rows),
      ...tables.flatMap(({ rows }) => rows),
      ...checks.flatMap(({ likelihoods }) => likelihoods),
    ];
    const before = rowsOf(real);
    const after = rowsOf(moved);
    expect(before.length).toBeGreaterThan(300);
    for (const [index, row] of after.entries()) {
      expect(row.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 12);
      for (const [place, one] of row.entries()) {
        const ratio = one / (before[index]?.[place] ?? NaN);
        // Its own factor, and that of the sum it is divided by.
        expect(ratio).toBeGreaterThan(1 / 4);
        expect(ratio).toBeLessThan(4);
      }
    }
    expect(after).not.toEqual(before);
  });
});

describe('draws', () => {
  test('come as often as their distribution says', () => {
    const random = seeded(3);
    const p = [0.5, 0.3, 0, 0.2];
    const counts = [0, 0, 0, 0];
    const n = 20_000;
    for (const index of many(n, () => draw(p, random))) counts[index] = (counts[index] ?? 0) + 1;
    for (const [index, chance] of p.entries()) {
      const error = Math.sqrt((chance * (1 - chance)) / n);
      expect(Math.abs((counts[index] ?? 0) / n - chance)).toBeLessThanOrEqual(4 * error);
    }
  });

  test('a sum that rounding left below 1 still gives an index', () => {
    expect(draw([0.5, 0.5 - 1e-16], () => 1 - 2 ** -53)).toBe(1);
  });
});
