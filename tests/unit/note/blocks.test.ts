import { describe, expect, test } from 'vitest';
import {
  codeLengths,
  correctCode,
  dataSymbols,
  masked,
  protect,
  unprotect,
} from '../../../src/note/blocks.ts';
import { makeRandom, spoil } from './random.ts';

test('a code is as long as the table says', () => {
  expect(codeLengths).toEqual([16, 20, 24, 28, 36, 40, 44, 48, 52, 56, 60]);
  // Bits a code of each length carries: five for each data symbol.
  expect(codeLengths.map((length) => 5 * dataSymbols(length))).toEqual([
    50, 70, 90, 110, 120, 140, 160, 180, 200, 220, 240,
  ]);
});

describe.each(codeLengths)('%i characters', (length) => {
  const random = makeRandom(length);

  test('masking twice undoes it, and the mask is not flat', () => {
    const word = random.symbols(length);
    expect(masked(masked(word))).toEqual(word);
    const mask = masked(new Uint8Array(length));
    expect(new Set(mask).size).toBeGreaterThan(8);
  });

  test('data come back from a code', () => {
    for (let run = 0; run < 100; run += 1) {
      const data = random.symbols(dataSymbols(length));
      const code = protect(data, length);
      expect(code).toHaveLength(length);
      expect(unprotect(code)).toEqual(data);
      expect(correctCode(code, [], 0)).toEqual({ code, spare: 6 });
    }
  });

  test('two changes anywhere are undone, the unused check symbols counted', () => {
    const blocks = length > 28 ? 2 : 1;
    for (let run = 0; run < 200; run += 1) {
      const code = protect(random.symbols(dataSymbols(length)), length);
      const places = random.places(2, length);
      const found = correctCode(spoil(code, places, random), [], 2);
      const [one = 0, two = 0] = places;
      const spare = one % blocks === two % blocks ? 2 : 4;
      expect(found, `seed ${length}, run ${run}`).toEqual({ code, spare });
    }
  });

  test('changes are counted over both blocks', () => {
    for (let run = 0; run < 200; run += 1) {
      const code = protect(random.symbols(dataSymbols(length)), length);
      // One in each block, two in one of them.
      const spoiled = spoil(code, [0, 2, 5], random);
      expect(correctCode(spoiled, [], 2), `seed ${length}, run ${run}`).toBeUndefined();
    }
  });
});
