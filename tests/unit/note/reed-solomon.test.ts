import { describe, expect, test } from 'vitest';
import { addChecks, allZero, correct, syndromes } from '../../../src/note/reed-solomon.ts';
import { makeRandom, spoil } from './random.ts';

/** Codewords with two data symbols: few enough (1024) to compare a word with each. */
function smallCode(length: number): Uint8Array[] {
  return Array.from({ length: 1024 }, (_, i) => {
    const word = new Uint8Array(length);
    word[length - 8] = i >> 5;
    word[length - 7] = i & 31;
    addChecks(word);
    return word;
  });
}

function distance(a: Uint8Array, b: Uint8Array, except: readonly number[] = []): number {
  let count = 0;
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i] && !except.includes(i)) count += 1;
  return count;
}

const code = smallCode(8);

test('every codeword has six zero syndromes, and no single change leaves them so', () => {
  const random = makeRandom(1);
  for (let length = 7; length <= 31; length += 1) {
    const word = random.symbols(length);
    addChecks(word);
    expect(allZero(syndromes(word))).toBe(true);
    for (const place of word.keys()) {
      expect(allZero(syndromes(spoil(word, [place], random)))).toBe(false);
    }
  }
});

test('the least distance is seven', () => {
  const zero = new Uint8Array(8);
  const weights = code.slice(1).map((word) => distance(word, zero));
  expect(Math.min(...weights)).toBe(7);
});

describe('correcting agrees with comparing against every codeword', () => {
  const limits = [0, 1, 2].flatMap((most) =>
    [0, 1, 2, 3, 4, 5, 6].filter((e) => e + 2 * most <= 6).map((e) => [most, e] as const),
  );

  test.each(limits)('at most %i unknown, %i known bad places', (most, erasures) => {
    const seed = 100 * most + erasures;
    const random = makeRandom(seed);
    let corrected = 0;
    let given = 0;
    for (let run = 0; run < 600; run += 1) {
      const wrong = random.below(5);
      const word = spoil(random.pick(code), random.places(wrong, 8), random);
      const erased = random.places(erasures, 8);
      for (const place of erased) word[place] = 0;
      const near = code.filter((other) => distance(word, other, erased) <= most);
      const found = correct(word, erased, most);
      // Six erased of eight leave two known symbols: any two belong to one codeword.
      expect(near.length, `seed ${seed} run ${run}`).toBeLessThanOrEqual(1);
      expect(found && [...found], `seed ${seed} run ${run}`).toEqual(near[0] && [...near[0]]);
      if (found) corrected += 1;
      given += 1;
    }
    expect(corrected).toBeGreaterThan(50);
    expect(corrected).toBeLessThanOrEqual(given);
    if (erasures + most < 6) expect(corrected).toBeLessThan(given);
  });
});

test('a word beyond the limits stays as it was', () => {
  const random = makeRandom(5);
  const word = spoil(random.pick(code), [0, 1, 2], random);
  const before = word.slice();
  expect(correct(word, [], 2)).toBeUndefined();
  expect(word).toEqual(before);
});
