/** Long work in short slices, so that the page answers in between. */
import { breathe } from '../shared/breathe.ts';

/** Milliseconds a slice may take: with what the browser does beside it, well below a long task's 50. */
const SLICE = 12;

/**
 * Each item through `use`, with pauses.
 * @param told hears how many are done, once a pause
 */
export async function inSlices<T, R>(
  items: readonly T[],
  use: (item: T) => R,
  told: (done: number) => void = () => undefined,
): Promise<R[]> {
  const results: R[] = [];
  let started = performance.now();
  for (const item of items) {
    results.push(use(item));
    if (performance.now() - started < SLICE) continue;
    told(results.length);
    await breathe();
    started = performance.now();
  }
  return results;
}
