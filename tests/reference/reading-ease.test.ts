import { describe, expect, it } from 'vitest';
import { fernandezHuerta, kandelMoles, szigriszt } from '../../src/text/reading-ease.ts';
import { frenchSyllables, spanishSyllables } from '../../src/text/syllables.ts';

describe('Spanish syllables', () => {
  // Divisions as taught in Real Academia Española, Ortografía de la lengua española
  // (2010), on diphthongs, triphthongs and hiatus; words from memory.
  it.each([
    ['ciudad', 2],
    ['país', 2],
    ['aéreo', 4],
    ['murciélago', 4],
    ['huésped', 2],
    ['estudiáis', 3],
    ['prohibir', 2],
    ['construir', 2],
    ['rey', 1],
    ['mayo', 2],
    ['guitarra', 3],
    ['pingüino', 3],
    ['queso', 2],
    ['poeta', 3],
    ['y', 1],
    ['otorrinolaringólogo', 9],
  ])('of "%s" are %d', (word, syllables) => {
    expect(spanishSyllables(word)).toBe(syllables);
  });
});

describe('French syllables', () => {
  // As said in standard French (the counts dictionaries give); words from memory.
  it.each([
    ['le', 1],
    ['porte', 1],
    ['four', 1],
    ['quatre', 1],
    ['fenêtre', 2],
    ['théâtre', 2],
    ['maïs', 2],
    ['naïf', 2],
    ['fumée', 2],
    ['cuisinière', 3],
    ['disjoncteur', 3],
    ['technicien', 3],
    ['électricité', 5],
    ['oui', 1],
    ['été', 2],
    ['créer', 2],
  ])('of "%s" are %d', (word, syllables) => {
    expect(frenchSyllables(word)).toBe(syllables);
  });
});

describe('reading ease', () => {
  const counts = { words: 100, sentences: 5, syllables: 200 };

  // Constants as printed in the papers named in the source; sums by hand.
  it('follows the published formulas', () => {
    // 206.835 − 62.3 × 2 − 20
    expect(szigriszt(counts)).toBeCloseTo(62.235, 10);
    // 206.84 − 60 × 2 − 1.02 × 20
    expect(fernandezHuerta(counts)).toBeCloseTo(66.44, 10);
    // 207 − 1.015 × 20 − 73.6 × 2
    expect(kandelMoles(counts)).toBeCloseTo(39.5, 10);
  });
});
