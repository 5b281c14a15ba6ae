/** The check of every language but English, which the others are made from. */
import type { Guide } from '../guide/types.ts';
import { fail, ok } from '../result.ts';
import { checkLanguage } from '../text/check-language.ts';
import type { LanguageReport } from '../text/check-language.ts';
import type { Glossary } from '../text/glossary.ts';
import { all } from './content.ts';
import type { Content, Checked } from './content.ts';
import { fileProblem } from './problem.ts';
import type { Problem } from './problem.ts';
import { TOP } from './read.ts';
import type { Text } from './read.ts';
import { safetySentences } from './safety-sentences.ts';
import type { Language } from './schema/languages.ts';
import { BLOCKS, MODEL, SOURCE, namespaces, ownerTexts } from './texts.ts';

const isMissing = (problems: readonly Problem[]): boolean =>
  problems.every(({ about, trouble }) => about === 'file' && trouble.code === 'missing');

/** Text files of a language by their names, as values. */
export function readTexts(
  content: Content,
  language: string,
  names: readonly string[],
): Checked<ReadonlyMap<string, unknown>> {
  // Where a language other than English lacks a file, its sentences are missing, and told as such.
  const texts = all<(Text | undefined)[]>(
    ...names.map((name) => {
      const text = content.text(`text/${language}/${name}.json`);
      return language === SOURCE || text.ok || !isMissing(text.error) ? text : ok(undefined);
    }),
  );
  return texts.ok
    ? ok(new Map(names.map((name, index) => [name, texts.value[index]?.value])))
    : texts;
}

/** The text files of a language that do not follow a guide's pages. */
export function textsOf(content: Content, language: string): Checked<readonly string[]> {
  const languages = content.languages();
  if (!languages.ok) return languages;
  const known = languages.value[language];
  if (known) return ok(known.staff ? [...namespaces, MODEL] : ownerTexts);
  const trouble = { code: 'name-unknown', name: language, among: 'languages.yaml' } as const;
  return fail([fileProblem({ file: content.shown('languages.yaml') }, TOP, trouble)]);
}

/** A guide's sentences without what phone staff say: a language they do not speak has none. */
const withoutDesk = (pages: unknown): unknown =>
  JSON.parse(
    JSON.stringify(pages, (key, value: unknown) => (key === 'desk' ? undefined : value)),
  ) as unknown;

/** A language compared with English and measured, whether the firm speaks it yet or not. */
export function languageReport(content: Content, language: string): Checked<LanguageReport> {
  const parts = all<
    [
      readonly string[],
      readonly Guide[],
      Readonly<Record<string, Language>>,
      Glossary,
      (path: string) => boolean,
    ]
  >(
    textsOf(content, language),
    content.guides(),
    content.languages(),
    content.glossary(language),
    safetySentences(content),
  );
  if (!parts.ok) return parts;
  const [others, guides, languages, glossary, isSafety] = parts.value;
  const ofGuides = [BLOCKS, ...guides.map(({ id }) => id)];
  const names = [...others, ...ofGuides];
  const texts = all<[ReadonlyMap<string, unknown>, ReadonlyMap<string, unknown>]>(
    readTexts(content, SOURCE, names),
    readTexts(content, language, names),
  );
  if (!texts.ok) return texts;
  const [english, own] = texts.value;
  const silent = new Set(languages[language]?.staff === true ? [] : ofGuides);
  const read = (of: string, name: string) => {
    if (of !== SOURCE) return own.get(name);
    const text = english.get(name);
    return silent.has(name) ? withoutDesk(text) : text;
  };
  const target = { language, glossary, same: new Set(languages[language]?.same) };
  const files = { all: names, guides: ofGuides, owners: ownerTexts, isSafety, read };
  return ok(checkLanguage(files, target));
}
