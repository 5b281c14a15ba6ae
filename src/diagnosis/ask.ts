/** Which optional details are worth a question before the visit. */
import { detailKey } from './evidence.ts';
import { at, sum } from './numbers.ts';
import { informative, shares } from './posterior.ts';
import type { Evidence, Model } from './types.ts';

/**
 * Bits that the answer to a question is expected to tell of the fault, after the evidence e:
 *
 *   I(F; A | e) = Σₐ P(a | e) · Σ_f P(f | a, e) · log₂ (P(f | a, e) / P(f | e))
 *
 * (mutual information; Shannon 1948). 0 for a question that is answered or that no table has.
 */
export function bitsOf(model: Model, evidence: Evidence, key: string): number {
  const table = model.evidence.find((one) => one.key === key);
  if (!table || evidence.some((one) => one.key === key)) return 0;
  const now = shares(model, evidence);
  return sum(
    table.answers.map((answer) => {
      const asked = [...evidence, { key, answer }];
      const likelihood = informative(model, asked).at(-1)?.likelihood ?? [];
      const chance = sum(now.map((share, fault) => share * at(likelihood, fault)));
      const then = shares(model, asked);
      return (
        chance *
        sum(then.map((share, fault) => (share > 0 ? share * Math.log2(share / at(now, fault)) : 0)))
      );
    }),
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
  return model.evidence
    .filter(({ key }) => key.startsWith(detailKey('')))
    .map(({ key }) => ({ key, bits: bitsOf(model, evidence, key) }))
    .filter(({ bits }) => bits >= LEAST)
    .toSorted((a, b) => b.bits - a.bits)
    .slice(0, most);
}
