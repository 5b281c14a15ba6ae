/** The element at an index that the caller knows to exist; a RangeError otherwise. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const value = list[index];
  if (value === undefined) throw new RangeError(`no element ${index}`);
  return value;
}

/** The sum of a list, 0 for an empty one. */
export function sum(list: Iterable<number>): number {
  let total = 0;
  for (const one of list) total += one;
  return total;
}

/** Nonnegative weights, scaled to sum to 1. */
export function scaled(weights: readonly number[]): number[] {
  const total = sum(weights);
  return weights.map((one) => one / total);
}

/** Logarithms of weights, with any common offset, as shares that sum to 1. */
export function normalised(logs: readonly number[]): number[] {
  // The largest becomes e^0, so that nothing overflows and the sum is never 0.
  const top = Math.max(...logs);
  return scaled(logs.map((log) => Math.exp(log - top)));
}

/** What work in pieces comes to, done in one go. */
export function inOneGo<R>(pieces: Iterator<unknown, R>): R {
  for (;;) {
    const { done, value } = pieces.next();
    if (done) return value;
  }
}
