// Reed–Solomon of @zxing/library, GenericGF(0x25, 32, 1): an independent implementation.
import { GenericGF, ReedSolomonDecoder, ReedSolomonEncoder } from '@zxing/library';
import { expect, test } from 'vitest';
import { multiply } from '../../../src/note/gf32.ts';
import {
  addChecks,
  allZero,
  checkSymbols,
  correct,
  syndromes,
} from '../../../src/note/reed-solomon.ts';
import { makeRandom, spoil } from '../../unit/note/random.ts';

const field = new GenericGF(0x25, 32, 1);
const encoder = new ReedSolomonEncoder(field);
const decoder = new ReedSolomonDecoder(field);

test('the fields agree on every product', () => {
  for (let a = 0; a < 32; a += 1) {
    for (let b = 0; b < 32; b += 1) expect(multiply(a, b)).toBe(field.multiply(a, b));
  }
});

test('the check symbols agree for every length', () => {
  const random = makeRandom(31);
  for (let length = 7; length <= 31; length += 1) {
    for (let run = 0; run < 200; run += 1) {
      const ours = random.symbols(length);
      const theirs = Int32Array.from(ours);
      addChecks(ours);
      encoder.encode(theirs, checkSymbols);
      expect([...ours], `seed 31, length ${length}, run ${run}`).toEqual([...theirs]);
    }
  }
});

/** Theirs corrects up to three; in hopeless cases it can return what is no codeword. */
function theirCorrection(word: Uint8Array): number[] | undefined {
  const received = Int32Array.from(word);
  try {
    decoder.decode(received, checkSymbols);
  } catch {
    return undefined;
  }
  const fixed = Uint8Array.from(received);
  return allZero(syndromes(fixed)) ? [...fixed] : undefined;
}

test.each([16, 20, 28, 31])('corrections agree at length %i', (length) => {
  const random = makeRandom(length);
  let corrected = 0;
  let refused = 0;
  for (let run = 0; run < 5000; run += 1) {
    const word = random.symbols(length);
    addChecks(word);
    const spoiled = spoil(word, random.places(random.below(7), length), random);
    const ours = correct(spoiled, [], 2);
    const theirs = theirCorrection(spoiled);
    const near = theirs && theirs.filter((symbol, i) => symbol !== spoiled[i]).length <= 2;
    expect(ours && [...ours], `seed ${length}, run ${run}`).toEqual(near ? theirs : undefined);
    if (ours) corrected += 1;
    else refused += 1;
  }
  expect(corrected).toBeGreaterThan(1000);
  expect(refused).toBeGreaterThan(1000);
});
