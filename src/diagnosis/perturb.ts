import { scaled } from './numbers.ts';
import type { Random } from './random.ts';
import type { Model } from './types.ts';

/**
 * The model with every prior and every likelihood, of facts, answers and checks,
 * multiplied by a factor of its own, log-uniform between 1/factor and factor;
 * then each distribution is scaled to sum to 1 again.
 */
export function perturbed(model: Model, factor: number, random: Random): Model {
  const shaken = (distribution: readonly number[]) =>
    scaled(distribution.map((one) => one * factor ** (2 * random() - 1)));
  const priors = shaken(model.faults.map(({ prior }) => prior));
  return {
    ...model,
    faults: model.faults.map((fault, index) => ({ ...fault, prior: priors[index] ?? 0 })),
    facts: (model.facts ?? []).map((fact) => ({ ...fact, rows: fact.rows.map(shaken) })),
    evidence: model.evidence.map((table) => ({ ...table, rows: table.rows.map(shaken) })),
    checks: model.checks.map((check) => ({
      ...check,
      likelihoods: check.likelihoods.map(shaken),
    })),
  };
}
