/** The chance of at most `most` events in `trials`, each of probability `p`. */
function atMost(most: number, trials: number, p: number): number {
  let term = (1 - p) ** trials;
  let sum = term;
  for (let k = 1; k <= most; k += 1) {
    term *= ((trials - k + 1) / k) * (p / (1 - p));
    sum += term;
  }
  return sum;
}

/**
 * The upper 95 % bound (one-sided) of a share of which `events` were seen in `trials`: the exact one
 * of Clopper and Pearson (Biometrika 26, 1934). With no event it is close to 3 / trials.
 */
export function upperBound(events: number, trials: number): number {
  let [low, high] = [events / trials, 1];
  for (let step = 0; step < 50; step += 1) {
    const middle = (low + high) / 2;
    if (atMost(events, trials, middle) > 0.05) low = middle;
    else high = middle;
  }
  return high;
}
