import { describe, expect, it } from 'vitest';
import { grade } from '../../src/text/readability.ts';

describe('Flesch–Kincaid grade level', () => {
  // Worked examples of the formula as published: 0.39 W/S + 11.8 Syl/W − 15.59.
  it.each([
    { words: 13, sentences: 1, syllables: 24, published: 11.2646, digits: 4 },
    { words: 100, sentences: 8, syllables: 140, published: 5.805, digits: 3 },
  ])(
    'is $published for $words words, $sentences sentences, $syllables syllables',
    ({ words, sentences, syllables, published, digits }) => {
      expect(grade(words, sentences, syllables)).toBeCloseTo(published, digits);
    },
  );

  // The lowest grade there is, of one-syllable sentences of one word: 0.39 + 11.8 − 15.59.
  it('is −3.40 at the least', () => {
    expect(grade(1, 1, 1)).toBeCloseTo(-3.4, 10);
  });
});
