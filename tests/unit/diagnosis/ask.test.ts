import { describe, expect, test } from 'vitest';
import { askTable } from '../../../src/diagnosis/ask-table.ts';
import { details, guides, models } from '../../../src/content/load.ts';
import { bitsOf, worthAsking } from '../../../src/diagnosis/ask.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { seeded, type Random } from '../../../src/diagnosis/random.ts';
import type { Model } from '../../../src/diagnosis/types.ts';
import { many, modelOf, whole } from './support/models.ts';
import { given, realModel, told } from './support/real.ts';
import { simulate } from './support/simulate.ts';

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

/** A model with details `detail.q0`… to ask, and parts. */
function withParts(random: Random): Model {
  const faults = whole(2, 7, random);
  const parts = whole(1, 5, random);
  const row = () => many(whole(2, 3, random), () => random() ** 3 + 0.001);
  const answers = whole(1, 4, random);
  const model = modelOf({
    priors: many(faults, () => random() + 0.01),
    questions: many(answers, () => {
      const first = row();
      return [first, ...many(faults - 1, () => first.map(() => random() ** 3 + 0.001))];
    }),
    parts: many(faults, () => many(parts, (part) => part).filter(() => random() < 0.4)),
    costs: many(parts, () => whole(1, 40, random)),
  });
  return {
    ...model,
    evidence: model.evidence.map((one) => ({ ...one, key: `detail.${one.key}` })),
  };
}

/** The cheapest of all sets of parts, each set's cost summed over the faults. */
function cheapest({ faults, parts, costs }: Model, now: readonly number[]) {
  const sets = many(2 ** parts.length, (mask) => parts.filter((_, bit) => (mask >> bit) & 1));
  const costOf = (set: Model['parts']) =>
    set.reduce((sum, { price }) => sum + price * costs.carrying, 0) +
    faults.reduce((sum, { parts: needs }, fault) => {
      const cured = needs.every((need) => set.some(({ id }) => id === need));
      return sum + (cured ? 0 : (now[fault] ?? 0) * costs.secondVisit);
    }, 0);
  return sets
    .map((set) => ({ parts: set.map(({ id }) => id), cost: costOf(set) }))
    .reduce((best, one) => (one.cost < best.cost - 1e-9 ? one : best));
}

describe('what is worth asking before the drive', () => {
  test('is what changes the load, and saves what every load and answer tried say, on 300 random models', () => {
    let changed = 0;
    for (let seed = 1; seed <= 300; seed++) {
      const model = withParts(seeded(seed));
      const now = cheapest(model, shares(model, []));
      const expected = model.evidence
        .map(({ key, answers, rows }) => {
          const outcomes = answers.map((answer, place) => {
            const best = cheapest(model, shares(model, [{ key, answer }]));
            const chance = model.faults.reduce(
              (sum, { prior }, fault) => sum + prior * (rows[fault]?.[place] ?? NaN),
              0,
            );
            return { answer, chance, ...best };
          });
          return {
            key,
            saves: outcomes.reduce((left, { chance, cost }) => left - chance * cost, now.cost),
            changes: outcomes
              .map(({ answer, parts }) => ({
                answer,
                more: parts.filter((id) => !now.parts.includes(id)),
                fewer: now.parts.filter((id) => !parts.includes(id)),
              }))
              .filter(({ more, fewer }) => more.length + fewer.length > 0),
          };
        })
        // Two minutes of an hour that costs 60.
        .filter(({ saves, changes }) => changes.length > 0 && saves >= 2)
        .toSorted((a, b) => b.saves - a.saves)
        .slice(0, 2);
      const found = worthAsking(model, [], 2);
      expect(
        found.map(({ key, changes }) => ({ key, changes })),
        `seed ${seed}`,
      ).toEqual(expected.map(({ key, changes }) => ({ key, changes })));
      for (const [place, { saves }] of found.entries())
        expect(saves).toBeCloseTo(expected[place]?.saves ?? NaN, 9);
      changed += found.length;
    }
    expect(changed).toBeGreaterThan(100);
  });

  test('is not a detail that is answered, or that the walk has told', () => {
    const model = realModel();
    const evidence = told('since.overnight', 'display.blank');
    expect(bitsOf(model, evidence, 'detail.lamp')).toBeGreaterThan(0.03);
    for (const more of ['detail.lamp.works', 'lamp.works'])
      expect(bitsOf(model, [...evidence, ...given(more)], 'detail.lamp')).toBe(0);
    expect(bitsOf(model, told('since.outage'), 'detail.storm')).toBe(0);
  });
});

describe('the table that the note page asks by', () => {
  const names = details().map(({ id }) => id);

  test.each(guides().filter(({ id }) => models()[id]))(
    '$id: its three details hold four fifths of what the model’s own three would tell',
    (guide) => {
      const model = models()[guide.id];
      if (!model) throw new Error('no model');
      const table = askTable(model, guide, names);
      const world = { guide, details: details(), truth: model };
      let [own, best] = [0, 0];
      for (const { evidence: all } of simulate(world, 30, seeded(11))) {
        const evidence = all.filter(({ key }) => !key.startsWith('detail.'));
        const now = shares(model, evidence);
        const bits = names.map((id) => bitsOf(model, evidence, `detail.${id}`, now));
        const score = (place: number) =>
          evidence.reduce((sum, { key, answer }) => {
            const by = table.by[key] ?? table.by[key.replace(`${guide.id}/`, '')];
            return sum + (by?.[answer]?.[place] ?? 0);
          }, table.base[place] ?? NaN);
        const three = (of: (place: number) => number) =>
          [...names.keys()]
            .toSorted((a, b) => of(b) - of(a))
            .slice(0, 3)
            .reduce((sum, place) => sum + (bits[place] ?? NaN), 0);
        own += three(score);
        best += three((place) => bits[place] ?? NaN);
      }
      expect(own).toBeGreaterThan(0.8 * best);
    },
  );
});
