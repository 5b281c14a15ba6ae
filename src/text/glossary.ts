import { z } from 'zod';
import type { TranslationProblem } from './translation.ts';

/** Keys whose values name something and are the same in every language. */
export const NAMING = new Set(['from']);

const forms = z.array(z.string().trim().min(1));

function readable(pattern: string): boolean {
  try {
    return new RegExp(pattern, 'iu').flags !== '';
  } catch {
    return false;
  }
}

/**
 * `content/glossaries/<language>.json`: how the trade's terms are said. Where an English
 * sentence has one of `english` as a whole word, the translation has one of `use` in it; no
 * sentence at all, English ones neither, matches one of the patterns `never`. Upper and lower
 * case are the same.
 */
export const glossarySchema = z.record(
  z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/),
  z.strictObject({
    english: forms.default([]),
    use: forms.min(1),
    never: z.array(z.string().min(1).refine(readable, 'no regular expression')).default([]),
  }),
);

export type Glossary = z.output<typeof glossarySchema>;

/** A whole word or phrase in English, as a test of a sentence. */
function wholeWord(phrase: string): RegExp {
  const quoted = phrase.replace(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`);
  return new RegExp(`(?<![\\p{L}\\p{N}-])${quoted}(?![\\p{L}\\p{N}-])`, 'iu');
}

const tests = new Map<string, RegExp>();
function said(sentence: string, phrase: string): boolean {
  const test = tests.get(phrase) ?? wholeWord(phrase);
  tests.set(phrase, test);
  return test.test(sentence);
}

/** The words of a sentence that the glossary refuses. */
function refusedWords(own: string, path: string, glossary: Glossary): TranslationProblem[] {
  return Object.values(glossary).flatMap(({ use, never }) =>
    never.flatMap((pattern) => {
      const [found] = new RegExp(pattern, 'iu').exec(own) ?? [];
      return found === undefined ? [] : [{ code: 'term-forbidden', path, found, use } as const];
    }),
  );
}

/**
 * The same for all sentences of a text file, names left out.
 * @param path where the value is, `file:` at the top of a file
 */
export function refused(value: unknown, path: string, glossary: Glossary): TranslationProblem[] {
  if (typeof value === 'string') return refusedWords(value, path, glossary);
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value)
    .filter(([key]) => !NAMING.has(key))
    .flatMap(([key, inner]) =>
      refused(inner, path.endsWith(':') ? path + key : `${path}.${key}`, glossary),
    );
}

/** Where a translation leaves a trade term out or says it in a word the glossary refuses. */
export function terms(
  english: string,
  own: string,
  path: string,
  glossary: Glossary,
): TranslationProblem[] {
  const lower = own.toLowerCase();
  const missing = Object.entries(glossary).filter(
    ([, { english: theirs, use }]) =>
      theirs.some((phrase) => said(english, phrase)) &&
      !use.some((form) => lower.includes(form.toLowerCase())),
  );
  return [
    ...missing.map(([term, { use }]) => ({ code: 'term-missing', path, term, use }) as const),
    ...refusedWords(own, path, glossary),
  ];
}
