import { describe, expect, test } from 'vitest';
import { bitsOf, worthAsking } from '../../../src/diagnosis/ask.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import { many, modelOf, whole } from './support/models.ts';
import { given, realModel, told } from './support/real.ts';

const entropy = (list: readonly number[]) =>
  -list.reduce((sum, one) => sum + (one > 0 ? one * Math.log2(one) : 0), 0);

describe('what a question tells', () => {
  test('by hand: one that decides between two equal faults tells a bit, one that does not none', () => {
    const rows = (yes: number) => [
      [yes, 1 - yes],
      [1 - yes, yes],
    ];
    const model = modelOf({ priors: [1, 1], questions: [rows(1), rows(0.5), rows(0.9)] });
    expect(bitsOf(model, [], 'q0')).toBeCloseTo(1, 12);
    expect(bitsOf(model, [], 'q1')).toBeCloseTo(0, 12);
    expect(bitsOf(model, [], 'q2')).toBeCloseTo(1 - entropy([0.9, 0.1]), 12);
    expect(bitsOf(model, given('q2.a0'), 'q2')).toBe(0);
    expect(bitsOf(model, [], 'nowhere')).toBe(0);
  });

  test('is what entropy falls by on the average, over random models', () => {
    const random = seeded(3);
    for (let count = 0; count < 200; count++) {
      const faults = whole(2, 6, random);
      const row = () => many(3, () => random() + 0.01);
      const model = modelOf({
        priors: many(faults, () => random() + 0.01),
        questions: [many(faults, row), many(faults, row)],
      });
      const evidence = given('q0.a1');
      const now = shares(model, evidence);
      const table = model.evidence[1];
      const left = (table?.answers ?? []).reduce((sum, answer, place) => {
        const chance = now.reduce(
          (all, share, fault) => all + share * (table?.rows[table.rowOf[fault] ?? 0]?.[place] ?? 0),
          0,
        );
        return sum + chance * entropy(shares(model, [...evidence, { key: 'q1', answer }]));
      }, 0);
      expect(bitsOf(model, evidence, 'q1')).toBeCloseTo(entropy(now) - left, 10);
    }
  });
});

describe('what is worth asking', () => {
  const model = realModel();

  test('are details not answered yet, the most telling first', () => {
    const evidence = told('since.overnight', 'display.blank', 'listen.blank');
    const list = worthAsking(model, evidence, 2);
    expect(list).toHaveLength(2);
    // A leg that is lost takes burners with it.
    expect(list[0]?.key).toBe('detail.burners');
    expect(list[0]?.bits).toBeGreaterThanOrEqual(list[1]?.bits ?? NaN);
    const after = worthAsking(model, [...evidence, ...given('detail.burners.all')], 10);
    expect(after.map(({ key }) => key)).not.toContain('detail.burners');
  });

  test('is none that tells again what was told', () => {
    const outage = told('since.outage');
    expect(bitsOf(model, outage, 'detail.storm')).toBeCloseTo(0, 12);
    const lamp = told('display.blank', 'lamp.dark');
    expect(bitsOf(model, lamp, 'detail.lamp')).toBeLessThan(
      bitsOf(model, told('display.blank'), 'detail.lamp') / 3,
    );
  });
});
