import { describe, expect, test } from 'vitest';
import { codeLengths, correctCode, dataSymbols, protect } from '../../../src/note/blocks.ts';
import { addChecks, correct } from '../../../src/note/reed-solomon.ts';
import { alphabet } from '../../../src/note/symbols.ts';
import { makeRandom } from './random.ts';

/** The code of all zeros moved along, the freed places at the end left 0. */
function moved(length: number, by: number): Uint8Array {
  const code = protect(new Uint8Array(dataSymbols(length)), length);
  return Uint8Array.from(code, (_, i) => code[i + by] ?? 0);
}

describe('why codes are masked', () => {
  // The code is linear: where zeros are lost, what holds for one code holds for all.
  test.each([
    [1, 2],
    [2, 1],
  ])('%i lost at one end and added at the other, %i wrong, is never taken', (shift, wrong) => {
    for (const length of codeLengths) {
      for (const by of [shift, -shift]) {
        const free = Array.from({ length: shift }, (_, i) => (by > 0 ? length - 1 - i : i));
        expect(correctCode(moved(length, by), free, wrong), `${length} by ${by}`).toBeUndefined();
      }
    }
  });

  test('a lost first character and a new last one: measured without and with the mask', () => {
    const seed = 3;
    const random = makeRandom(seed);
    const runs = 100_000;
    const taken = { unmasked: 0, masked: 0 };
    for (let run = 0; run < runs; run += 1) {
      const data = random.symbols(dataSymbols(16));
      const last = random.below(32);
      const shifted = (code: Uint8Array): Uint8Array => Uint8Array.of(...code.subarray(1), last);
      const bare = new Uint8Array(16);
      bare.set(data);
      addChecks(bare);
      if (correct(shifted(bare), [], 2)) taken.unmasked += 1;
      if (correctCode(shifted(protect(data, 16)), [], 2)) taken.masked += 1;
    }
    // Unmasked, every code that begins with 0 gives itself away: 1 in 32 of random numbers.
    expect(taken.unmasked / runs).toBeGreaterThan(0.03);
    // Masked, no more than chance: words within two changes of a codeword are
    // (1 + 16·31 + 120·31²) / 32⁶ = 1.1e-4 of all; three standard deviations above that.
    expect(taken.masked / runs, `seed ${seed}`).toBeLessThan(2.1e-4);
  });

  test('one character all over, the alphabet and its reverse are no codes', () => {
    for (const length of codeLengths) {
      for (let symbol = 0; symbol < 32; symbol += 1) {
        const flat = new Uint8Array(length).fill(symbol);
        const rising = Uint8Array.from({ length }, (_, i) => (symbol + i) % 32);
        const falling = rising.toReversed();
        for (const word of [flat, rising, falling]) {
          expect(correctCode(word, [], 2), `${alphabet.charAt(symbol)} ${length}`).toBeUndefined();
        }
      }
    }
  });

  test('the beginning or the end of a longer code is no shorter one', () => {
    const seed = 4;
    const random = makeRandom(seed);
    let taken = 0;
    let tried = 0;
    for (const [i, length] of codeLengths.entries()) {
      for (const shorter of codeLengths.slice(0, i)) {
        for (let run = 0; run < 200; run += 1) {
          // Small numbers have zeros in front: where an unmasked code would be open to it.
          const data = random.symbols(dataSymbols(length));
          data.fill(0, 0, Math.min(length - shorter, data.length));
          const code = protect(data, length);
          for (const cut of [code.subarray(0, shorter), code.subarray(length - shorter)]) {
            if (correctCode(cut.slice(), [], 2)) taken += 1;
            tried += 1;
          }
        }
      }
    }
    expect(tried).toBe(55 * 400);
    // Chance alone: at most 2.5e-4 (28 symbols in one block) of them.
    expect(taken, `seed ${seed}`).toBeLessThan(12);
  });
});
