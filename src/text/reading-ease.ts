/** How easily passages read: the higher the easier. No formula for Arabic has found general use. */
import { count } from './readability.ts';
import type { Speech, TextCounts } from './readability.ts';
import { frenchSyllables, spanishSyllables } from './syllables.ts';

/** A published formula and the least score a homeowner's page may have by it. */
export interface Ease {
  readonly name: string;
  readonly score: (counts: TextCounts) => number;
  readonly least: number;
}

/** Szigriszt Pazos 1993, on the INFLESZ scale of Barrio-Cantalejo et al. 2008: from 65 "quite easy". */
export function szigriszt({ words, sentences, syllables }: TextCounts): number {
  return 206.835 - 62.3 * (syllables / words) - words / sentences;
}

/** Fernández Huerta 1959, corrected by Law 2011: words a sentence, not sentences in 100 words. */
export function fernandezHuerta({ words, sentences, syllables }: TextCounts): number {
  return 206.84 - 60 * (syllables / words) - 1.02 * (words / sentences);
}

/** Kandel & Moles 1958 (Application de l’indice de Flesch à la langue française). */
export function kandelMoles({ words, sentences, syllables }: TextCounts): number {
  return 207 - 1.015 * (words / sentences) - 73.6 * (syllables / words);
}

/** What a language is measured by; undefined where nothing is. */
export interface Measured {
  readonly speech: Speech;
  readonly formulas: readonly [Ease, ...Ease[]];
}

const measured: Readonly<Record<string, Measured>> = {
  es: {
    speech: spanishSyllables,
    formulas: [
      { name: 'Szigriszt Pazos, INFLESZ', score: szigriszt, least: 65 },
      { name: 'Fernández Huerta, corrected', score: fernandezHuerta, least: 65 },
    ],
  },
  fr: {
    speech: frenchSyllables,
    formulas: [{ name: 'Kandel & Moles', score: kandelMoles, least: 65 }],
  },
};

export function measuredBy(language: string): Measured | undefined {
  return measured[language];
}

/** A score of passages taken together; with nothing to read it is the easiest there is. */
export function easeOf(passages: readonly string[], { speech }: Measured, ease: Ease): number {
  const counts = count(passages, speech);
  return counts.sentences === 0 ? Infinity : ease.score(counts);
}
