import { checkKey } from './evidence.ts';
import { at, normalised } from './numbers.ts';
import type { Evidence, EvidenceGiven, FaultId, Model } from './types.ts';

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

/** P(answer | fault) for each fault in the model's order; undefined when it says nothing. */
function likelihoodOf(model: Model, { key, answer }: EvidenceGiven): number[] | undefined {
  const table = model.evidence.find((one) => one.key === key);
  const check = table ? undefined : model.checks.find(({ id }) => checkKey(id) === key);
  const column = table
    ? table.answers.indexOf(answer)
    : (check?.results.findIndex(({ id }) => id === answer) ?? -1);
  if (column < 0) return undefined;
  const rows = table ? table.rowOf.map((row) => at(table.rows, row)) : (check?.likelihoods ?? []);
  return rows.map((row) => at(row, column));
}

/**
 * The answers that carry information: those that a table of the model lists, and
 * results of checks (key `check.` and the check's name).
 */
export function informative(model: Model, evidence: Evidence): Informative[] {
  return evidence.flatMap(({ key, answer }) => {
    const likelihood = likelihoodOf(model, { key, answer });
    return likelihood ? [{ key, answer, likelihood }] : [];
  });
}

/** 10·log10 of a ratio given as a difference of natural logarithms: decibans. */
const DECIBANS = 10 / Math.LN10;

/**
 * P(answer | any fault but this one): the likelihood averaged over the others,
 * each weighted by what is believed of it before this answer.
 */
function complement(before: readonly number[], likelihood: readonly number[], fault: number) {
  let mass = 0;
  let joint = 0;
  // Summed over the others, not as all minus own: that would cancel near share 1.
  for (const [other, share] of before.entries()) {
    if (other === fault) continue;
    mass += share;
    joint += share * at(likelihood, other);
  }
  return mass > 0 ? joint / mass : at(likelihood, fault);
}

/**
 * Share of each fault after the evidence, in the model's order. Single-fault
 * Bayes with answers independent given the fault, in log space.
 */
export function shares(model: Model, evidence: Evidence): number[] {
  const given = informative(model, evidence);
  return normalised(
    model.faults.map(({ prior }, fault) =>
      given.reduce((log, { likelihood }) => log + Math.log(at(likelihood, fault)), Math.log(prior)),
    ),
  );
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
  const weights: Weight[][] = model.faults.map(() => []);
  let logs = model.faults.map(({ prior }) => Math.log(prior));
  for (const { key, answer, likelihood } of informative(model, evidence)) {
    const before = normalised(logs);
    for (const [fault, list] of weights.entries()) {
      const others = complement(before, likelihood, fault);
      const nats = Math.log(at(likelihood, fault)) - Math.log(others);
      list.push({ key, answer, decibans: DECIBANS * nats });
    }
    logs = logs.map((log, fault) => log + Math.log(at(likelihood, fault)));
  }
  const after = normalised(logs);
  return model.faults
    .map(({ id }, index) => ({ fault: id, share: at(after, index), weights: at(weights, index) }))
    .sort((a, b) => b.share - a.share);
}
