/** The shares against a plain enumeration of the joint distribution, written apart from them. */
import { expect, test } from 'vitest';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import type { Random } from '../../../src/diagnosis/random.ts';
import type { EvidenceGiven, EvidenceTable, Fact, Model } from '../../../src/diagnosis/types.ts';
import { many, modelOf, whole } from '../../unit/diagnosis/support/models.ts';

const MODELS = 1000;

function distribution(length: number, random: Random): number[] {
  const weights = many(length, () => random() ** 2 + 0.01);
  const total = weights.reduce((a, b) => a + b, 0);
  return weights.map((one) => one / total);
}

/** Some of the numbers below `count`, at least one. */
function some(count: number, random: Random): number[] {
  const list = many(count, (index) => index).filter(() => random() < 0.5);
  return list.length > 0 ? list : [whole(0, count - 1, random)];
}

function randomModel(random: Random): Model {
  const faults = whole(2, 5, random);
  const facts = many(whole(0, 3, random), (index): Fact => {
    const values = whole(2, 3, random);
    const rows = whole(1, 3, random);
    return {
      id: `h${index}`,
      values: many(values, (value) => `v${value}`),
      rows: many(rows, () => distribution(values, random)),
      rowOf: many(faults, () => whole(0, rows - 1, random)),
    };
  });
  const tables = many(whole(1, 4, random), (index): EvidenceTable => {
    const answers = whole(2, 3, random);
    const rows = whole(1, 5, random);
    const rules = many(whole(0, 3, random), () => ({
      row: whole(0, rows - 1, random),
      ...(random() < 0.5 ? { faults: some(faults, random) } : {}),
      ...(random() < 0.6 && facts.length > 0
        ? {
            if: some(facts.length, random).map(
              (fact) => [fact, some(facts[fact]?.values.length ?? 1, random)] as const,
            ),
          }
        : {}),
      // Of the tables before it only: what is asked later decides no earlier answer.
      ...(random() < 0.4 && index > 0
        ? {
            given: [
              [`q${whole(0, index - 1, random)}`, some(3, random).map((one) => `a${one}`)] as const,
            ],
          }
        : {}),
    }));
    return {
      key: `q${index}`,
      answers: many(answers, (answer) => `a${answer}`),
      rows: many(rows, () => distribution(answers, random)),
      rowOf: many(faults, () => whole(0, rows - 1, random)),
      rules,
      ...(random() < 0.2 && index > 0
        ? { supersedes: { a0: [`q${whole(0, index - 1, random)}`] } }
        : {}),
    };
  });
  const plain = modelOf({ priors: many(faults, () => random() + 0.05) });
  return { ...plain, facts, evidence: tables };
}

/** All combinations of one number below each of the given ones. */
function combinations(sizes: readonly number[]): number[][] {
  return sizes.reduce<number[][]>(
    (all, size) => all.flatMap((one) => many(size, (next) => [...one, next])),
    [[]],
  );
}

/** The whole table of P(fault, facts, answers), of which what fits the evidence is added up. */
function enumerated(model: Model, evidence: readonly EvidenceGiven[]): number[] {
  const { facts = [], evidence: tables } = model;
  const said = (key: string) => evidence.find((one) => one.key === key)?.answer;
  const out = tables.flatMap(({ key, supersedes }) => supersedes?.[said(key) ?? ''] ?? []);
  const asked = tables.filter(({ key }) => said(key) !== undefined && !out.includes(key));
  const mass = model.faults.map(() => 0);
  let total = 0;
  for (const [fault, { prior }] of model.faults.entries())
    for (const hidden of combinations(facts.map(({ values }) => values.length)))
      for (const answers of combinations(asked.map((table) => table.answers.length))) {
        let p = prior;
        for (const [fact, value] of hidden.entries())
          p *= facts[fact]?.rows[facts[fact].rowOf[fault] ?? 0]?.[value] ?? NaN;
        for (const [index, table] of asked.entries()) {
          let { row } = { row: table.rowOf[fault] ?? 0 };
          for (const rule of (table.rules ?? []).toReversed()) {
            const right = !rule.faults || rule.faults.includes(fault);
            const so = (rule.if ?? []).every(([fact, ones]) => ones.includes(hidden[fact] ?? -1));
            // A superseded answer was given all the same.
            const then = (rule.given ?? []).every(([key, ones]) => {
              const place = asked.findIndex((one) => one.key === key);
              const answer = place < 0 ? said(key) : asked[place]?.answers[answers[place] ?? -1];
              return ones.includes(answer ?? '');
            });
            if (right && so && then) row = rule.row;
          }
          p *= table.rows[row]?.[answers[index] ?? -1] ?? NaN;
        }
        total += p;
        const fits = asked.every(
          ({ key, answers: list }, index) => list[answers[index] ?? -1] === said(key),
        );
        if (fits) mass[fault] = (mass[fault] ?? NaN) + p;
      }
  expect(total).toBeCloseTo(1, 12);
  const fitting = mass.reduce((a, b) => a + b, 0);
  return mass.map((one) => one / fitting);
}

test(`the shares of ${MODELS} random models are those of the joint distribution`, () => {
  const random = seeded(20);
  let worst = 0;
  let tied = 0;
  for (let index = 0; index < MODELS; index++) {
    const model = randomModel(random);
    const evidence = model.evidence.flatMap(({ key, answers }) =>
      random() < 0.8 ? [{ key, answer: answers[whole(0, answers.length - 1, random)] ?? '' }] : [],
    );
    const found = shares(model, evidence);
    const wanted = enumerated(model, evidence);
    for (const [fault, share] of wanted.entries())
      worst = Math.max(worst, Math.abs(share - (found[fault] ?? NaN)));
    if (model.evidence.some(({ rules = [] }) => rules.some((rule) => (rule.if ?? []).length > 1)))
      tied++;
  }
  expect(worst).toBeLessThan(1e-12);
  // Models in which one answer ties facts together are among them.
  expect(tied).toBeGreaterThan(100);
});
