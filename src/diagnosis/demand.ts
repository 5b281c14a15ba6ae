import { at } from './numbers.ts';

/**
 * Distribution of the number of successes among independent trials, each with
 * its own probability: Poisson-binomial. Element k is P(k successes). Exact, by
 * adding one trial at a time.
 */
export function poissonBinomial(probabilities: readonly number[]): number[] {
  let pmf = [1];
  for (const p of probabilities)
    pmf = [...pmf, 0].map((stay, k) => stay * (1 - p) + (k > 0 ? at(pmf, k - 1) * p : 0));
  return pmf;
}

/** P(more than k) for each k of a distribution, summed from the small end for accuracy. */
export function tails(pmf: readonly number[]): number[] {
  const above = pmf.map(() => 0);
  for (let k = pmf.length - 2; k >= 0; k--) above[k] = at(above, k + 1) + at(pmf, k + 1);
  return above;
}

/** The smallest stock that covers a demand with at least the chosen chance. */
export function stockFor(pmf: readonly number[], chance: number): number {
  return tails(pmf).findIndex((tail) => tail <= 1 - chance);
}
