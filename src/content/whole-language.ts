/** The check of every language but English, which the others are made from. */
import { checkLanguage, languageHolds } from '../text/check-language.ts';
import type { LanguageReport } from '../text/check-language.ts';
import { checked, fileIn, guides } from './load.ts';
import { glossarySchema } from '../text/glossary.ts';
import { languageLines } from '../text/language-words.ts';
import { languageOf } from './languages.ts';
import { ownerTexts, textsOf } from './text-files.ts';

/** The language that sentences are written in first. */
export const SOURCE = 'en';

const parsed = new Map<string, unknown>();

/** A JSON file, read once: every language is compared with the same English. */
function jsonIn(path: string): unknown {
  if (!parsed.has(path)) parsed.set(path, parsedIn(path));
  return parsed.get(path);
}

function parsedIn(path: string): unknown {
  const text = fileIn(path);
  if (text === undefined) return undefined;
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}

/** A language of this copy compared with English, and measured. */
export function languageReport(language: string): LanguageReport {
  const own = guides().map(({ id }) => id);
  const glossary = `glossaries/${language}.json`;
  const files = {
    all: [...textsOf(language), 'shared', ...own],
    guides: ['shared', ...own],
    owners: ownerTexts,
    read: (of: string, name: string) => jsonIn(`text/${of}/${name}.json`),
  };
  return checkLanguage(files, {
    language,
    glossary: checked(glossarySchema, jsonIn(glossary) ?? {}, glossary),
    same: new Set(languageOf(language).same),
  });
}

/** Ends the build where a language is not whole or reads too hard. */
export function needWhole(language: string): void {
  if (language === SOURCE) return;
  const report = languageReport(language);
  if (!languageHolds(report)) throw new Error(languageLines(report).join('\n'));
}
