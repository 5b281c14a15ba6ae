/** Long work in short slices, so that the page answers in between. */
import { breathe } from './breathe.ts';

/** Milliseconds a slice may take: with what the browser does beside it, well below a long task's 50. */
const SLICE = 12;

/**
 * What work in pieces comes to, with pauses; undefined once it is over, as other work is wanted.
 * @param told hears of each pause
 */
export async function inPieces<R>(
  pieces: Iterator<unknown, R>,
  over: () => boolean = () => false,
  told: () => void = () => undefined,
): Promise<R | undefined> {
  let started = performance.now();
  while (!over()) {
    const { done, value } = pieces.next();
    if (done) return value;
    if (performance.now() - started < SLICE) continue;
    told();
    await breathe();
    started = performance.now();
  }
  return undefined;
}

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
  function* each(): Generator {
    for (const item of items) yield results.push(use(item));
  }
  await inPieces(each(), undefined, () => told(results.length));
  return results;
}
