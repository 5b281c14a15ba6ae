// Douglas Crockford, "Base 32", https://www.crockford.com/base32.html: the symbols for 0 to 31 and
// the characters read in their place.
import { expect, test } from 'vitest';
import { alphabet, symbolsToNumber } from '../../../src/note/symbols.ts';
import { plainSymbols } from '../../../src/note/typed.ts';

/** Value, symbols read as it, symbol written, as in Crockford's table. */
const table: readonly (readonly [value: number, read: string, written: string])[] = [
  [0, '0Oo', '0'],
  [1, '1IiLl', '1'],
  ...[...'23456789'].map((digit, i) => [i + 2, digit, digit] as const),
  [10, 'Aa', 'A'],
  [11, 'Bb', 'B'],
  [12, 'Cc', 'C'],
  [13, 'Dd', 'D'],
  [14, 'Ee', 'E'],
  [15, 'Ff', 'F'],
  [16, 'Gg', 'G'],
  [17, 'Hh', 'H'],
  [18, 'Jj', 'J'],
  [19, 'Kk', 'K'],
  [20, 'Mm', 'M'],
  [21, 'Nn', 'N'],
  [22, 'Pp', 'P'],
  [23, 'Qq', 'Q'],
  [24, 'Rr', 'R'],
  [25, 'Ss', 'S'],
  [26, 'Tt', 'T'],
  [27, 'Vv', 'V'],
  [28, 'Ww', 'W'],
  [29, 'Xx', 'X'],
  [30, 'Yy', 'Y'],
  [31, 'Zz', 'Z'],
];

test('the table is Crockford’s, both ways', () => {
  expect(table).toHaveLength(32);
  for (const [value, characters, written] of table) {
    expect(alphabet.charAt(value)).toBe(written);
    for (const character of characters) {
      expect(plainSymbols(character)).toEqual({ ok: true, value: Uint8Array.of(value) });
    }
  }
});

test('four letters are left out, U is read as nothing', () => {
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
  expect(letters.filter((letter) => !alphabet.includes(letter)).join('')).toBe('ILOU');
  expect(plainSymbols('U').ok).toBe(false);
  expect(plainSymbols('u').ok).toBe(false);
});

test('hyphens are for the eye only, and the most significant symbol comes first', () => {
  const read = plainSymbols('1-0-0');
  expect(read.ok && symbolsToNumber(read.value, 3)).toBe(1024n);
});
