// ITU Radio Regulations, appendix 14: code words for letters and figures.
import { expect, test } from 'vitest';
import { letterWords, spell } from '../../../src/note/spelling.ts';
import { digitWords, spelledSymbols } from '../../../src/note/typed.ts';
import type { NoteCode } from '../../../src/note/types.ts';

const letters =
  'Alfa Bravo Charlie Delta Echo Foxtrot Golf Hotel India Juliett Kilo Lima Mike November ' +
  'Oscar Papa Quebec Romeo Sierra Tango Uniform Victor Whiskey X-ray Yankee Zulu';
const figures =
  'Nadazero Unaone Bissotwo Terrathree Kartefour Pantafive Soxisix Setteseven Oktoeight Novenine';

test('the words are the ITU’s', () => {
  expect(Object.values(letterWords).join(' ')).toBe(letters);
  expect(Object.keys(letterWords).join('')).toBe('ABCDEFGHIJKLMNOPQRSTUVWXYZ');
  expect(digitWords.join(' ')).toBe(figures);
});

test('each word begins with its letter', () => {
  for (const [letter, word] of Object.entries(letterWords)) expect(word.charAt(0)).toBe(letter);
});

test('all figures are read from their code words', () => {
  const read = spelledSymbols(figures);
  expect(read?.ok && [...read.value]).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]);
});

test('four words printed wrongly in a public table are not read', () => {
  const wrong = ['Duotwo', 'Carrefour', 'Pentafive', 'Novonine'];
  for (const word of wrong) {
    const read = spelledSymbols(`Unaone ${word} Unaone`);
    expect(read && !read.ok && read.error.code, word).toBe('bad-word');
  }
});

test('a code is spelled group by group', () => {
  expect(spell('A0XJ-9ZZZ' as NoteCode)).toEqual([
    ['Alfa', '0', 'X-ray', 'Juliett'],
    ['9', 'Zulu', 'Zulu', 'Zulu'],
  ]);
});
