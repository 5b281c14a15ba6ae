/** Which optional details are worth a question. */
import { detailKey } from './evidence.ts';
import { at, sum } from './numbers.ts';
import { loadFor } from './parts.ts';
import { informative, shares } from './posterior.ts';
import type { Evidence, Model, PartId } from './types.ts';

/** An answer that a question may get, with its chance and the shares of the faults after it. */
export interface Outlook {
  readonly answer: string;
  readonly chance: number;
  readonly then: readonly number[];
}

/**
 * What a question may get, after the evidence e whose shares are `now`:
 * P(a | e) = Σ_f P(f | e) P(a | f, e), and P(f | a, e) by Bayes. Nothing for a question that is
 * answered, that the walk has told, or that no table has.
 */
export function outlooks(
  model: Model,
  evidence: Evidence,
  key: string,
  now: readonly number[],
): readonly Outlook[] {
  const table = model.evidence.find((one) => one.key === key);
  if (!table || evidence.some((one) => one.key === key)) return [];
  return table.answers.flatMap((answer) => {
    const last = informative(model, [...evidence, { key, answer }]).at(-1);
    if (last?.key !== key) return [];
    const joint = now.map((share, fault) => share * at(last.likelihood, fault));
    const chance = sum(joint);
    return { answer, chance, then: joint.map((one) => one / chance) };
  });
}

/**
 * Bits that the answer to a question is expected to tell of the fault, after the evidence e:
 *
 *   I(F; A | e) = Σₐ P(a | e) · Σ_f P(f | a, e) · log₂ (P(f | a, e) / P(f | e))
 *
 * (mutual information; Shannon 1948). 0 where there is nothing to ask.
 */
export function bitsOf(
  model: Model,
  evidence: Evidence,
  key: string,
  now: readonly number[] = shares(model, evidence),
): number {
  return sum(
    outlooks(model, evidence, key, now).map(
      ({ chance, then }) =>
        chance *
        sum(then.map((share, f) => (share > 0 ? share * Math.log2(share / at(now, f)) : 0))),
    ),
  );
}

/** What an answer would change of the parts to load. */
export interface Change {
  readonly answer: string;
  readonly more: readonly PartId[];
  readonly fewer: readonly PartId[];
}

export interface Question {
  readonly key: string;
  /** Expected, in the firm's money: what the load costs less for knowing the answer. */
  readonly saves: number;
  /** For the answers that change the load. */
  readonly changes: readonly Change[];
}

/** A call to ask takes so many minutes of somebody's hour; what saves less is not worth it. */
const CALL_MINUTES = 2;

/**
 * The details whose answer would change what to load, those that save most first. What knowing
 * an answer is worth (the value of information; Howard 1966): the least expected cost of a load
 * now, less what it is on the average after the answer,
 *
 *   min_L C(L | e) − Σₐ P(a | e) · min_L C(L | a, e)
 */
export function worthAsking(model: Model, evidence: Evidence, most: number): readonly Question[] {
  const now = shares(model, evidence);
  const load = loadFor(model, now);
  const least = (model.costs.hourlyRate * CALL_MINUTES) / 60;
  return model.evidence
    .filter(({ key }) => key.startsWith(detailKey('')))
    .map(({ key }): Question => {
      const answers = outlooks(model, evidence, key, now).map(({ answer, chance, then }) => {
        const { parts, cost } = loadFor(model, then);
        const more = parts.filter((id) => !load.parts.includes(id));
        const fewer = load.parts.filter((id) => !parts.includes(id));
        return { answer, more, fewer, cost: chance * cost };
      });
      const changes = answers
        .filter(({ more, fewer }) => more.length + fewer.length > 0)
        .map(({ answer, more, fewer }) => ({ answer, more, fewer }));
      return { key, saves: load.cost - sum(answers.map(({ cost }) => cost)), changes };
    })
    .filter(({ saves, changes }) => changes.length > 0 && saves >= least)
    .toSorted((a, b) => b.saves - a.saves)
    .slice(0, most);
}
