/** Journeys drawn at random from a number that can be written down, the same ones every time. */
import { uniformBigInt } from 'pure-rand/distribution/uniformBigInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Journey } from '../guide/types.ts';
import type { CodebookGuide } from './codebook.ts';
import { unrank } from './edges.ts';

/**
 * `size` journeys of a guide, each drawn from all of them alike, repeats possible.
 * @param seed its lowest 32 bits count
 */
export function* sampleJourneys(
  guide: CodebookGuide,
  size: number,
  seed: number,
): Generator<Journey> {
  const random = xoroshiro128plus(seed);
  for (let i = 0; i < size; i += 1) {
    const journey = unrank(guide, uniformBigInt(random, 0n, guide.first.journeys - 1n));
    if (journey) yield journey;
  }
}
