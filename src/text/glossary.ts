import { z } from 'zod';
import { eachOnce } from '../once.ts';
import type { TranslationProblem } from './translation.ts';

/** Keys whose values name something and are the same in every language. */
export const NAMING = new Set(['from']);

/** So that a pattern need not name each kind of apostrophe and space. */
const plain = (text: string): string => text.replaceAll('’', "'").replace(/[\u00a0\u202f]/g, ' ');

const LETTER = String.raw`[\p{L}\p{M}\p{N}]`;
/** ECMAScript's own `\b` knows no letters but a to z. */
const EDGE = `(?:(?<!${LETTER})(?=${LETTER})|(?<=${LETTER})(?!${LETTER}))`;

/** Every sentence of a value with the keys that lead to it; names are none. */
export function sentencesIn(
  value: unknown,
  path: readonly string[] = [],
): (readonly [path: readonly string[], sentence: string])[] {
  if (typeof value === 'string') return [[path, value]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value)
    .filter(([key]) => !NAMING.has(key))
    .flatMap(([key, inner]) => sentencesIn(inner, [...path, key]));
}

/** A glossary's pattern: a regular expression in which `\b` is the edge of a word in any script. */
const pattern = eachOnce(
  (source: string) => new RegExp(plain(source).replaceAll(String.raw`\b`, EDGE), 'iu'),
);

function readable(source: string): boolean {
  try {
    return pattern(source).unicode;
  } catch {
    return false;
  }
}

const patterns = z.array(z.string().min(1).refine(readable, 'no regular expression'));

/**
 * `content/glossaries/<language>.json`: how the trade's terms are said, and why so. Where an
 * English sentence has one of `english` as a whole word, the translation matches one of the
 * patterns `use`; no sentence at all, English ones neither, matches one of the patterns `never`.
 * Upper and lower case are the same, and so are both apostrophes and all spaces.
 */
export const glossarySchema = z.record(
  z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/),
  z.strictObject({
    english: z.array(z.string().trim().min(1)).default([]),
    use: patterns.min(1),
    never: patterns.default([]),
    /** Why the one is said and not the other, for whoever meets the refusal. */
    why: z.string().trim().min(1),
  }),
);

export type Glossary = z.output<typeof glossarySchema>;

/** A pattern that one of these matches. */
const any = (sources: readonly string[]): RegExp =>
  pattern(sources.map((source) => `(?:${source})`).join('|') || '(?!)');

/** One of these in an English sentence, as a whole word or phrase. */
const phrase = eachOnce((phrases: readonly string[]) => {
  const quoted = phrases.map((one) => one.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`));
  return any(quoted.map((one) => String.raw`(?<![\p{L}\p{N}-])${one}(?![\p{L}\p{N}-])`));
});

/** Anything that a glossary refuses: in nearly all sentences there is nothing. */
const anyRefused = eachOnce((glossary: Glossary) =>
  any(Object.values(glossary).flatMap(({ never }) => never)),
);

/** The words of a sentence that the glossary refuses. */
function refusedWords(own: string, path: string, glossary: Glossary): TranslationProblem[] {
  const sentence = plain(own);
  if (!anyRefused(glossary).test(sentence)) return [];
  return Object.values(glossary).flatMap(({ use, never, why }) =>
    never.flatMap((source) => {
      const [found] = pattern(source).exec(sentence) ?? [];
      return found === undefined
        ? []
        : [{ code: 'term-forbidden', path, found, use, why } as const];
    }),
  );
}

/** The same for all sentences of a text file, named `file:`. */
export function refused(value: unknown, file: string, glossary: Glossary): TranslationProblem[] {
  return sentencesIn(value).flatMap(([path, sentence]) =>
    refusedWords(sentence, file + path.join('.'), glossary),
  );
}

/** Where a translation leaves a trade term out or says it in a word the glossary refuses. */
export function terms(
  english: string,
  own: string,
  path: string,
  glossary: Glossary,
): TranslationProblem[] {
  const [theirs, ours] = [plain(english), plain(own)];
  const missing = Object.entries(glossary).filter(
    ([, { english: phrases, use }]) =>
      phrase(phrases).test(theirs) && !use.some((source) => pattern(source).test(ours)),
  );
  return [
    ...missing.map(
      ([term, { use, why }]) => ({ code: 'term-missing', path, term, use, why }) as const,
    ),
    ...refusedWords(own, path, glossary),
  ];
}
