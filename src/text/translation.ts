/** Finds what a translation left out, lost or left in English, and terms the glossary has otherwise. */
import { NAMING, terms } from './glossary.ts';
import type { Glossary } from './glossary.ts';
import { eachOnce } from '../once.ts';
import { placeholders, spoken } from '../placeholders.ts';

/** What is wrong with a translation; `path` is `file:key.key`. */
export type TranslationProblem =
  | {
      readonly code: 'key-missing' | 'key-unknown' | 'safety-missing' | 'text-empty';
      readonly path: string;
    }
  | { readonly code: 'sentence-long' | 'line-long'; readonly path: string; readonly count: number }
  | { readonly code: 'form-missing'; readonly path: string; readonly form: string }
  | { readonly code: 'kind-differs'; readonly path: string; readonly expected: string }
  | { readonly code: 'list-length'; readonly path: string; readonly expected: number }
  | { readonly code: 'untranslated'; readonly path: string; readonly text: string }
  | {
      readonly code: 'placeholder-lost' | 'placeholder-unknown';
      readonly path: string;
      readonly name: string;
    }
  | ({ readonly path: string; readonly use: readonly string[]; readonly why: string } & (
      | { readonly code: 'term-missing'; readonly term: string }
      | { readonly code: 'term-forbidden'; readonly found: string }
    ));

/** What the comparison needs to know of a language. */
export interface Target {
  readonly language: string;
  readonly glossary: Glossary;
  /** Texts that may stand as in English: names, and words both languages share. */
  readonly same: ReadonlySet<string>;
}

const FORM = /^(.+)_(zero|one|two|few|many|other)$/;
/** English words that no Spanish, French or Arabic sentence holds. */
const ENGLISH = /(?<![\p{L}'’])(?:the|your|you|and|with|this|which)(?![\p{L}'’])/iu;

/** Without placeholders, digits and signs. */
const letters = (text: string): string => spoken(text, '').replace(/[^\p{L}]/gu, '');

function kind(value: unknown): string {
  return Array.isArray(value) ? 'list' : typeof value;
}

function comparePlaceholders(
  english: string,
  own: string,
  path: string,
  counted: boolean,
): TranslationProblem[] {
  const [wanted, found] = [placeholders(english), placeholders(own)];
  // "One minute" may leave the number out.
  const needed = [...wanted].filter((name) => !(counted && name === 'count'));
  return [
    ...needed
      .filter((name) => !found.has(name))
      .map((name) => ({ code: 'placeholder-lost', path, name }) as const),
    ...[...found]
      .filter((name) => !wanted.has(name) && !(counted && name === 'count'))
      .map((name) => ({ code: 'placeholder-unknown', path, name }) as const),
  ];
}

function compareText(
  english: string,
  own: string,
  path: string,
  target: Target,
  counted: boolean,
): TranslationProblem[] {
  if (own.trim() === '') return [{ code: 'text-empty', path }];
  const left =
    (own === english || ENGLISH.test(own)) && letters(own) !== '' && !target.same.has(own);
  return [
    ...(left ? [{ code: 'untranslated', path, text: own } as const] : []),
    ...comparePlaceholders(english, own, path, counted),
    ...terms(english, own, path, target.glossary),
  ];
}

/** A language's plural forms (CLDR). */
const formsOf = eachOnce(
  (language: string) => new Intl.PluralRules(language).resolvedOptions().pluralCategories,
);

/** The keys an object of this language must have: counted ones in all its forms (CLDR). */
function wantedKeys(english: object, language: string): Map<string, string> {
  const wanted = new Map<string, string>();
  for (const key of Object.keys(english)) {
    const [, base] = FORM.exec(key) ?? [];
    if (base === undefined || !Object.hasOwn(english, `${base}_other`)) wanted.set(key, key);
    else for (const form of formsOf(language)) wanted.set(`${base}_${form}`, `${base}_other`);
  }
  return wanted;
}

function compareObjects(
  english: object,
  own: object,
  path: string,
  target: Target,
): TranslationProblem[] {
  const [theirs, ours] = [new Map(Object.entries(english)), new Map(Object.entries(own))];
  const wanted = wantedKeys(english, target.language);
  const at = (key: string): string => (path.endsWith(':') ? path + key : `${path}.${key}`);
  const missing = [...wanted].flatMap(([key, from]): TranslationProblem[] => {
    if (ours.has(key)) return compare(theirs.get(from), ours.get(key), at(key), target);
    const [, , form] = FORM.exec(key) ?? [];
    // Where the sentence has no form at all, one problem says so.
    if (key !== from && !ours.has(from)) return [];
    return key !== from && form !== undefined
      ? [{ code: 'form-missing', path: at(key), form }]
      : [{ code: 'key-missing', path: at(key) }];
  });
  const unknown = [...ours.keys()].filter((key) => !wanted.has(key));
  return [...missing, ...unknown.map((key) => ({ code: 'key-unknown', path: at(key) }) as const)];
}

/**
 * Every problem of a value beside the English one: strings, lists and objects of them.
 * @param path where the value is, `file:` at the top of a file
 */
export function compare(
  english: unknown,
  own: unknown,
  path: string,
  target: Target,
): TranslationProblem[] {
  if (kind(english) !== kind(own)) return [{ code: 'kind-differs', path, expected: kind(english) }];
  const key = path.split(/[.:]/).at(-1) ?? '';
  if (typeof english === 'string' && typeof own === 'string') {
    if (!NAMING.has(key)) return compareText(english, own, path, target, FORM.test(key));
    return english === own ? [] : [{ code: 'kind-differs', path, expected: english }];
  }
  if (Array.isArray(english) && Array.isArray(own)) {
    if (english.length !== own.length)
      return [{ code: 'list-length', path, expected: english.length }];
    return english.flatMap((one, i) => compare(one, own[i], `${path}.${String(i)}`, target));
  }
  if (typeof english === 'object' && english !== null && typeof own === 'object' && own !== null)
    return compareObjects(english, own, path, target);
  return [];
}

/** What a language says, and the English where it says nothing. */
export function filledIn(english: unknown, own: unknown, language: string): unknown {
  if (own === undefined) return ofLanguage(english, language);
  if (kind(english) !== 'object' || kind(own) !== 'object' || !english || !own) return own;
  const [theirs, ours] = [new Map(Object.entries(english)), new Map(Object.entries(own))];
  return Object.fromEntries(
    [...wantedKeys(english, language)].map(([key, from]) => [
      key,
      filledIn(theirs.get(key) ?? theirs.get(from), ours.get(key), language),
    ]),
  );
}

/** The English with as many counted forms as the language has. */
function ofLanguage(english: unknown, language: string): unknown {
  return kind(english) === 'object' && english ? filledIn(english, {}, language) : english;
}
