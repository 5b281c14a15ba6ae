/** Journeys drawn at random from a number that can be written down, the same ones every time. */
import type { Journey } from '../guide/types.ts';
import type { BookGuide } from './library.ts';
import { unrank } from './ways.ts';

const word = (1n << 64n) - 1n;

/**
 * Whole numbers below 2⁶⁴ from a seed: SplitMix64 (Steele, Lea & Flood 2014,
 * "Fast splittable pseudorandom number generators", figure 19).
 */
export function splitMix64(seed: bigint): () => bigint {
  let state = seed & word;
  return () => {
    state = (state + 0x9e3779b97f4a7c15n) & word;
    let z = state;
    z = ((z ^ (z >> 30n)) * 0xbf58476d1ce4e5b9n) & word;
    z = ((z ^ (z >> 27n)) * 0x94d049bb133111ebn) & word;
    return z ^ (z >> 31n);
  };
}

/** A number from 0 to `count` - 1, each equally likely: draws past the last whole share are thrown back. */
export function below(count: bigint, next: () => bigint): bigint {
  let range = 1n;
  let drawn = 0n;
  while (range < count) {
    range <<= 64n;
    drawn = (drawn << 64n) | next();
  }
  return drawn < range - (range % count) ? drawn % count : below(count, next);
}

/** `size` journeys of a guide, each drawn from all of them alike, repeats possible. */
export function* sampleJourneys(guide: BookGuide, size: number, seed: bigint): Generator<Journey> {
  const next = splitMix64(seed);
  for (let i = 0; i < size; i += 1) {
    const journey = unrank(guide, below(guide.start.journeys, next));
    if (journey) yield journey;
  }
}
