/**
 * Distribution of the number of successes among independent trials, each with
 * its own probability: Poisson-binomial. Element k is P(k successes). Exact, by
 * adding one trial at a time; n trials take n²/2 steps.
 */
export function poissonBinomial(probabilities: readonly number[]): number[] {
  const pmf = new Float64Array(probabilities.length + 1);
  pmf[0] = 1;
  // In place, the largest number first, and so only once over each.
  for (const [trials, p] of probabilities.entries())
    for (let k = trials + 1; k >= 0; k--)
      pmf[k] = (pmf[k] ?? 0) * (1 - p) + (k > 0 ? (pmf[k - 1] ?? 0) * p : 0);
  return [...pmf];
}

/** P(more than k) for each k of a distribution, summed from the small end for accuracy. */
export function tails(pmf: readonly number[]): number[] {
  const above = pmf.map(() => 0);
  for (let k = pmf.length - 2; k >= 0; k--) above[k] = (above[k + 1] ?? 0) + (pmf[k + 1] ?? 0);
  return above;
}

/** The smallest stock that covers a demand with at least the chosen chance. */
export function stockFor(pmf: readonly number[], chance: number): number {
  return tails(pmf).findIndex((tail) => tail <= 1 - chance);
}
