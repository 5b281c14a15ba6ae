import { syllable } from 'syllable';

/** What a reading grade is made of. */
export interface TextCounts {
  readonly words: number;
  readonly sentences: number;
  readonly syllables: number;
}

/** Syllables of one word of letters; of none, 0. */
export type Speech = (word: string) => number;

// Unicode's rules (UAX 29) part English, Spanish and French alike.
const sentenceSegmenter = new Intl.Segmenter('en', { granularity: 'sentence' });
const wordSegmenter = new Intl.Segmenter('en', { granularity: 'word' });

/**
 * Flesch–Kincaid grade, in years of US schooling (Kincaid, Fishburne, Rogers & Chissom 1975, Research
 * Branch Report 8-75); −Infinity where there is nothing to read.
 */
export function grade(words: number, sentences: number, syllables: number): number {
  if (words === 0 || sentences === 0) return -Infinity;
  return 0.39 * (words / sentences) + 11.8 * (syllables / words) - 15.59;
}

/** The sentences of passages; each passage ends its last sentence, with a full stop or without. */
export function sentencesOf(passages: readonly string[]): string[] {
  return passages.flatMap((passage) =>
    [...sentenceSegmenter.segment(passage)]
      .map(({ segment }) => segment.trim())
      .filter((segment) => wordsOf(segment).length > 0),
  );
}

function wordsOf(text: string): string[] {
  return [...wordSegmenter.segment(text)]
    .filter(({ isWordLike }) => isWordLike)
    .map(({ segment }) => segment);
}

/** Figures are read out digit by digit, as a telephone number is. */
function syllablesOf(word: string, speech: Speech): number {
  const digits = word.match(/\p{Nd}/gu)?.length ?? 0;
  const rest = word.replace(/\p{Nd}/gu, '');
  return Math.max(1, digits + (rest === '' ? 0 : speech(rest)));
}

function countOne(passage: string, speech: Speech): TextCounts {
  const sentences = sentencesOf([passage]);
  const words = sentences.flatMap(wordsOf);
  const syllables = words.reduce((sum, word) => sum + syllablesOf(word, speech), 0);
  return { words: words.length, sentences: sentences.length, syllables };
}

/** A passage is counted by each formula, with and without the answers beside it. */
const counted = new WeakMap<Speech, Map<string, TextCounts>>();

/** Words and sentences by UAX 29. Some English past forms ("locked") count too high: grades err upward. */
export function count(passages: readonly string[], speech: Speech = syllable): TextCounts {
  const known = counted.get(speech) ?? new Map<string, TextCounts>();
  counted.set(speech, known);
  const total = { words: 0, sentences: 0, syllables: 0 };
  for (const passage of passages) {
    const one = known.get(passage) ?? countOne(passage, speech);
    known.set(passage, one);
    total.words += one.words;
    total.sentences += one.sentences;
    total.syllables += one.syllables;
  }
  return total;
}

/** Flesch–Kincaid grade of English passages taken together. */
export function gradeOf(passages: readonly string[]): number {
  const { words, sentences, syllables } = count(passages);
  return grade(words, sentences, syllables);
}

/** Shorter sentences have a grade, but it says no more than that their one word is long. */
const LEAST_WORDS = 4;

/**
 * The sentences of four words or more that are hardest to read, the hardest first.
 * @param measure of passages taken together, the higher the harder
 */
export function hardest(
  passages: readonly string[],
  most: number,
  measure: (passages: readonly string[]) => number = gradeOf,
): readonly { readonly sentence: string; readonly grade: number }[] {
  return [...new Set(sentencesOf(passages))]
    .filter((sentence) => wordsOf(sentence).length >= LEAST_WORDS)
    .map((sentence) => ({ sentence, grade: measure([sentence]) }))
    .toSorted((a, b) => b.grade - a.grade)
    .slice(0, most);
}
