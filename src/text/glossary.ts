import { z } from 'zod';
import type { TranslationProblem } from './translation.ts';

const forms = z.array(z.string().trim().min(1));

/**
 * `content/glossaries/<language>.json`: how the trade's terms are said. Where an English
 * sentence has one of `english` as a whole word, the translation has one of `use` in it;
 * no sentence at all has one of `never`. Upper and lower case are the same.
 */
export const glossarySchema = z.record(
  z.string().regex(/^[a-z0-9]+(?:-[a-z0-9]+)*$/),
  z.strictObject({ english: forms.min(1), use: forms.min(1), never: forms.default([]) }),
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

/** Where a translation leaves a trade term out or says it in a word the glossary refuses. */
export function terms(
  english: string,
  own: string,
  path: string,
  glossary: Glossary,
): TranslationProblem[] {
  const lower = own.toLowerCase();
  return Object.entries(glossary).flatMap(([term, { english: theirs, use, never }]) => {
    const found = never.find((form) => lower.includes(form.toLowerCase()));
    const missing =
      theirs.some((phrase) => said(english, phrase)) &&
      !use.some((form) => lower.includes(form.toLowerCase()));
    return [
      ...(missing ? [{ code: 'term-missing', path, term, use } as const] : []),
      ...(found === undefined ? [] : [{ code: 'term-forbidden', path, found } as const]),
    ];
  });
}
