import type { Evidence, EvidenceGiven, EvidenceTable, FaultId, Model } from './types.ts';

/** How much one answer speaks for a fault (above 0) or against it (below 0). */
export interface Weight extends EvidenceGiven {
  readonly decibans: number;
}

export interface Share {
  readonly fault: FaultId;
  /** Posterior probability; the shares of a model sum to 1. */
  readonly share: number;
  /** One for each informative answer, in the order given. */
  readonly weights: readonly Weight[];
}

/** One informative answer with its likelihood for each fault, in the model's order. */
export interface Informative extends EvidenceGiven {
  readonly likelihood: readonly number[];
}

function column(table: EvidenceTable, answer: number): number[] {
  return table.rowOf.map((row) => table.rows[row]![answer]!);
}

/** The answers that carry information: those that a table of the model lists. */
export function informative(model: Model, evidence: Evidence): Informative[] {
  return evidence.flatMap(({ key, answer }) => {
    const table = model.evidence.find((one) => one.key === key);
    const index = table?.answers.indexOf(answer) ?? -1;
    return table && index >= 0 ? [{ key, answer, likelihood: column(table, index) }] : [];
  });
}

/** Log weights, of any common offset, as shares that sum to 1. */
export function normalised(logs: readonly number[]): number[] {
  const top = Math.max(...logs);
  const scaled = logs.map((log) => Math.exp(log - top));
  const sum = scaled.reduce((a, b) => a + b, 0);
  return scaled.map((one) => one / sum);
}

/** 10·log10 of a ratio given by natural logarithms: decibans. */
const DECIBANS = 10 / Math.LN10;

/**
 * P(answer | any other fault) for each fault: the likelihood averaged over the
 * other faults, each weighted by `shares` (what is believed before this answer).
 */
function complementLikelihood(shares: readonly number[], likelihood: readonly number[]): number[] {
  return shares.map((_, fault) => {
    let mass = 0;
    let joint = 0;
    // Summed over the others, not as total minus own: that would cancel near share 1.
    for (let other = 0; other < shares.length; other++) {
      if (other === fault) continue;
      mass += shares[other]!;
      joint += shares[other]! * likelihood[other]!;
    }
    return mass > 0 ? joint / mass : likelihood[fault]!;
  });
}

/**
 * Shares of all faults after the evidence, in the model's order. Single-fault
 * Bayes with answers independent given the fault, in log space.
 */
export function shares(model: Model, evidence: Evidence): number[] {
  const logs = model.faults.map(({ prior }) => Math.log(prior));
  for (const { likelihood } of informative(model, evidence))
    likelihood.forEach((one, fault) => (logs[fault]! += Math.log(one)));
  return normalised(logs);
}

/**
 * Posterior over the faults, the likeliest first (ties in the model's order).
 *
 * Each answer's weight of evidence for a fault is 10·log10 of the Bayes factor
 * of the fault against its complement, given the answers before it (I. J. Good,
 * "Probability and the Weighing of Evidence", 1950). So prior log-odds plus all
 * weights give the posterior log-odds exactly.
 */
export function posterior(model: Model, evidence: Evidence): Share[] {
  const logs = model.faults.map(({ prior }) => Math.log(prior));
  const weights: Weight[][] = model.faults.map(() => []);
  let current = normalised(logs);
  for (const { key, answer, likelihood } of informative(model, evidence)) {
    const others = complementLikelihood(current, likelihood);
    likelihood.forEach((one, fault) => {
      const decibans = DECIBANS * (Math.log(one) - Math.log(others[fault]!));
      weights[fault]!.push({ key, answer, decibans });
      logs[fault]! += Math.log(one);
    });
    current = normalised(logs);
  }
  return model.faults
    .map(({ id }, index) => ({ fault: id, share: current[index]!, weights: weights[index]! }))
    .sort((a, b) => b.share - a.share);
}
