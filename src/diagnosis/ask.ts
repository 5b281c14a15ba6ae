/** Which optional details are worth a question. */
import { detailKey } from './evidence.ts';
import { at, sum } from './numbers.ts';
import { informative, shares } from './posterior.ts';
import type { Evidence, Model } from './types.ts';

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

/** Fewer bits are not worth a call: a coin that falls heads 6 times in 10 tells as little. */
const LEAST = 0.03;

/** The optional details that would tell most of this visit's fault, the best first. */
export function worthAsking(
  model: Model,
  evidence: Evidence,
  most: number,
): readonly { readonly key: string; readonly bits: number }[] {
  const now = shares(model, evidence);
  return model.evidence
    .filter(({ key }) => key.startsWith(detailKey('')))
    .map(({ key }) => ({ key, bits: bitsOf(model, evidence, key, now) }))
    .filter(({ bits }) => bits >= LEAST)
    .toSorted((a, b) => b.bits - a.bits)
    .slice(0, most);
}
