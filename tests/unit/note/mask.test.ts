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

/** A code with this symbol at one of its ends. */
function codeEnding(length: number, at: number, symbol: number): Uint8Array {
  const random = makeRandom(length);
  for (;;) {
    const code = protect(random.symbols(dataSymbols(length)), length);
    if (code[at] === symbol) return code;
  }
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

  test('unmasked, losing the first character and gaining a last one often goes unseen', () => {
    const random = makeRandom(3);
    const runs = 20_000;
    let taken = 0;
    for (let run = 0; run < runs; run += 1) {
      const word = random.symbols(16);
      addChecks(word);
      if (correct(Uint8Array.of(...word.subarray(1), random.below(32)), [], 2)) taken += 1;
    }
    // Every codeword that begins with 0 gives itself away: 1 in 32 of random numbers.
    expect(taken / runs).toBeGreaterThan(0.025);
  });

  // Two codes with the same lost character differ by a codeword with a 0 there, which moved
  // along is a codeword again: so one code for each lost character stands for all codes.
  test.each([1, -1])('masked, it never goes unseen, whatever is lost or gained (%i)', (by) => {
    let tried = 0;
    for (const length of codeLengths) {
      for (let lost = 0; lost < 32; lost += 1) {
        const code = codeEnding(length, by > 0 ? 0 : length - 1, lost);
        for (let gained = 0; gained < 32; gained += 1) {
          const given =
            by > 0
              ? Uint8Array.of(...code.subarray(1), gained)
              : Uint8Array.of(gained, ...code.subarray(0, -1));
          const taken = correctCode(given, [], 2)?.code;
          const other = taken !== undefined && taken.join() !== code.join();
          expect(other, `${length}: ${lost} lost, ${gained} gained`).toBe(false);
          tried += 1;
        }
      }
    }
    expect(tried).toBe(codeLengths.length * 1024);
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
