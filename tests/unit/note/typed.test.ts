import { describe, expect, test } from 'vitest';
import type { Result } from '../../../src/result.ts';
import { homeWords, letterWords } from '../../../src/note/spelling.ts';
import { groupedText } from '../../../src/note/symbols.ts';
import { plainSymbols, spelledSymbols } from '../../../src/note/typed.ts';
import type { ReadProblem } from '../../../src/note/types.ts';

function shown(read: Result<Uint8Array, ReadProblem> | undefined): unknown {
  return read?.ok ? groupedText(read.value) : read?.error;
}

describe('plain text', () => {
  test.each([
    ['abcd efgh', 'ABCD-EFGH'],
    ['ABCD–EFGH', 'ABCD-EFGH'],
    ['AB\u00adCD\u2011EF\u00a0GH\u200b', 'ABCD-EFGH'],
    ['  a b\tc\nd  ', 'ABCD'],
    ['oO0', '000'],
    ['iIlL1', '1111-1'],
    ['A?_B', 'A??B'],
    ['\u2066ABCD\u2069\u200f-\u2067EFGH\u2069', 'ABCD-EFGH'],
    ['', ''],
    ['- -', ''],
  ])('%j reads as %s', (input, symbols) => {
    expect(shown(plainSymbols(input))).toBe(symbols);
  });

  test.each([
    ['ABUD', 2, 2, 'U'],
    ['AB-cu', 4, 3, 'u'],
    ['AB.CD', 2, 2, '.'],
    ['A B É', 4, 2, 'É'],
    ['AB😀', 2, 2, '😀'],
    ['😀', 0, 0, '😀'],
    ['А', 0, 0, 'А'],
    ['A\u202eB', 1, 1, '\u202e'],
    ['A\u0000', 1, 1, '\u0000'],
    ['Ａ', 0, 0, 'Ａ'],
    ['A*', 1, 1, '*'],
  ])('%j is refused at %i', (input, at, nth, character) => {
    expect(shown(plainSymbols(input))).toEqual({ code: 'bad-symbol', at, nth, character });
  });

  test('of all 65,536 UTF-16 units only the table is read', () => {
    const read = Array.from({ length: 0x10000 }, (_, unit) => String.fromCharCode(unit)).filter(
      (character) => plainSymbols(character).ok,
    );
    const visible = read.filter((character) => /[\p{L}\p{N}\p{Po}\p{Pc}]/u.test(character));
    expect(visible.join('')).toBe(
      '0123456789?ABCDEFGHIJKLMNOPQRSTVWXYZ_abcdefghijklmnopqrstvwxyz？＿',
    );
    // The rest: 27 spaces and line ends, seen or not, 12 hyphens, dashes and minus signs, and 7
    // marks and isolates of direction (Unicode UAX 9), but no override.
    const rest = read.filter((character) => !visible.includes(character));
    expect(rest.every((character) => /[\s\p{Pd}\p{Cf}\u2212]/u.test(character))).toBe(true);
    expect(rest).toHaveLength(27 + 12 + 7);
  });
});

describe('spelled text', () => {
  test.each([
    ['Alfa Bravo 7 Charlie', 'AB7C'],
    ['alpha, bravo'.replace(',', ''), 'AB'],
    ['ALFA-BRAVO-CHARLIE', 'ABC'],
    ['X-ray Alfa', 'XA'],
    ['x ray alfa', 'XA'],
    ['xray alfa', 'XA'],
    ['Juliet Juliett Whisky Whiskey', 'JJWW'],
    ['one two three', '123'],
    ['unaone bissotwo novenine', '129'],
    ['Oscar India Lima', '011'],
    ['Alfa ? Bravo', 'A?B'],
    ['Alfa 77 Bravo', 'A77B'],
    ['a bravo c', 'ABC'],
    ['x alfa', 'XA'],
  ])('%j reads as %s', (input, symbols) => {
    expect(shown(spelledSymbols(input))).toBe(symbols);
  });

  test.each([
    ['PAPA-1234-5678-9ABC'],
    ['PAPA-KILO-1234-5678'],
    ['ABCD-EFGH'],
    ['A B C D'],
    ['PAPAKILO'],
    ['ray ray'],
    [''],
  ])('%j is not taken for spelled', (input) => {
    expect(spelledSymbols(input)).toBeUndefined();
  });

  test('a word that is none is named with its place', () => {
    expect(shown(spelledSymbols('Alfa Bravoo Charlie'))).toEqual({
      code: 'bad-word',
      at: 5,
      nth: 1,
      word: 'bravoo',
    });
  });

  test('a word for a letter no code has is refused as that letter', () => {
    const problem = { code: 'bad-symbol', at: 5, nth: 1, character: 'U' };
    expect(shown(spelledSymbols('Alfa Uniform'))).toEqual(problem);
  });

  test('a bad character among words keeps its own place', () => {
    const problem = { code: 'bad-symbol', at: 6, nth: 2, character: '!' };
    expect(shown(spelledSymbols('Alfa 7! Bravo'))).toEqual(problem);
  });
});

// Common practice, no source: what is said at home must only never mean two letters.
test('what Spanish and French speakers say at home is read, with accents or without', () => {
  const said = Object.values(homeWords).flatMap(({ letters }) => Object.entries(letters));
  expect(said.length).toBeGreaterThan(20);
  for (const [letter, word] of said) {
    const bare = word.normalize('NFD').replace(/\p{M}/gu, '');
    for (const form of [word, bare, word.toUpperCase(), word.normalize('NFD')])
      expect(shown(spelledSymbols(form)), form).toBe(letter);
    for (const [other, itu] of Object.entries(letterWords))
      if (itu.toLowerCase() === bare.toLowerCase()) expect(other).toBe(letter);
  }
});
