import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  alphabetOf,
  alphabets,
  isTidy,
  longestError,
  numberToText,
  textToNumber,
  tidyErrorText,
  unencodable,
} from '../../../src/note/error-text.ts';

describe.each(alphabets.map((alphabet) => [alphabet.length, alphabet] as const))(
  'the alphabet of %i',
  (size, alphabet) => {
    test('has each character once', () => {
      expect(new Set(alphabet).size).toBe(size);
    });

    test('numbers the texts 1, 2, 3 … without a gap', () => {
      const texts = Array.from({ length: size + size * size + 5 }, (_, i) =>
        numberToText(BigInt(i + 1), alphabet),
      );
      expect(new Set(texts).size).toBe(texts.length);
      expect(texts.slice(0, size)).toEqual([...alphabet]);
      expect(texts[size]).toBe(alphabet.charAt(0).repeat(2));
      for (const [i, text = ''] of texts.entries()) {
        expect(textToNumber(text, alphabet)).toBe(BigInt(i + 1));
      }
    });

    test('takes every text there and back', () => {
      const text = fc
        .array(fc.constantFrom(...alphabet), { minLength: 1, maxLength: longestError })
        .map((characters) => characters.join(''));
      fc.assert(
        fc.property(text, (given) => {
          expect(numberToText(textToNumber(given, alphabet), alphabet)).toBe(given);
        }),
      );
    });

    test('ends at the longest text', () => {
      const last = textToNumber(alphabet.slice(-1).repeat(longestError), alphabet);
      expect(numberToText(last, alphabet)).toHaveLength(longestError);
      expect(numberToText(last + 1n, alphabet)).toBeUndefined();
    });
  },
);

test('the narrowest alphabet that has a text is taken', () => {
  expect(alphabetOf('F9 E1')).toBe(0);
  expect(alphabetOf('E-14')).toBe(0);
  expect(alphabetOf('Loc')).toBe(1);
  expect(alphabetOf('180°')).toBe(1);
  expect(alphabetOf('é')).toBe(-1);
});

test('names what cannot be carried, each once', () => {
  expect(unencodable('F9é→é')).toEqual(['é', '→']);
  expect(unencodable('<script>')).toEqual([]);
});

/** Any code point, those of the first 0x3000 oftener: marks, spaces and what looks like a letter. */
const unit = fc
  .oneof(fc.nat(0xff), fc.nat(0x2fff), fc.nat(0xffff), fc.nat(0x10ffff))
  .map((point) => String.fromCodePoint(point));

describe('tidying', () => {
  test.each([
    ['  F9   E1 ', 'F9 E1'],
    ['F9\n\tE1', 'F9 E1'],
    ['F9–E1', 'F9-E1'],
    ['F9\u00a0E1', 'F9 E1'],
    ['\u202eF9\u200b E1\u202c', 'F9 E1'],
    ['“Loc’', '"Loc\''],
    ['Ｆ９', 'F9'],
    ['180º', '180°'],
    ['F\u0000\u00079', 'F 9'],
    ['lOc', 'lOc'],
    ['\u202e', ''],
  ])('%j becomes %j', (typed, tidy) => {
    expect(tidyErrorText(typed)).toBe(tidy);
  });

  test('leaves nothing to tidy', () => {
    fc.assert(
      fc.property(fc.string({ unit, maxLength: 40 }), (typed) => {
        const tidy = tidyErrorText(typed);
        expect(isTidy(tidy)).toBe(true);
        expect(tidyErrorText(tidy)).toBe(tidy);
      }),
      { numRuns: 5000 },
    );
  });
});
