// Every sentence against Hunspell's dictionaries, and a short list of words of ours.
import { spawnSync } from 'node:child_process';
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { DICTIONARIES, hunspellProgram, missing } from '../../../.config/browsers.ts';
import { languageReport } from '../../../src/content/language-report.ts';
import { content, languages } from '../../../src/content/load.ts';
import { spoken } from '../../../src/placeholders.ts';
import { sentencesIn } from '../../../src/text/glossary.ts';

const segmenter = new Intl.Segmenter('en', { granularity: 'word' });
/** Pronouns that Spanish writes to the end of a verb: "apáguelo", "déselo" (RAE, Ortografía 2010). */
const ENCLITICS = [/l[oae]s?$/, /(?:me|te|se|nos)l[oae]s?$/, /(?:me|te|se|nos)$/];
const plain = (word: string) =>
  word
    .normalize('NFD')
    .replace(/\u0301/g, '')
    .normalize('NFC');

/** Words of a language's sentences → where one of them stands. */
function wordsOf(language: string): ReadonlyMap<string, string> {
  const folder = join(content().root, 'text', language);
  const found = readdirSync(folder).flatMap((file) => {
    const text = content().text(`text/${language}/${file}`);
    if (!text.ok) throw new Error(`${file} cannot be read`);
    return sentencesIn(text.value.value).flatMap(([path, sentence]) =>
      [...segmenter.segment(spoken(sentence, ' ').replaceAll('’', "'").replace(/\s/g, ' '))]
        .filter(
          ({ isWordLike, segment }) => isWordLike && /\p{L}/u.test(segment) && !/\d/.test(segment),
        )
        .map(({ segment }) => [segment, `${file}:${path.join('.')}`] as const),
    );
  });
  return new Map(found);
}

/** Those that the dictionary lacks. */
function unknown(words: readonly string[], language: string): ReadonlySet<string> {
  const dictionary = DICTIONARIES[language] ?? language;
  const { stdout, status } = spawnSync(hunspellProgram(), ['-l', '-i', 'utf-8', '-d', dictionary], {
    input: words.join('\n'),
    encoding: 'utf8',
  });
  expect(status).toBe(0);
  return new Set(stdout.split('\n').filter((word) => word !== ''));
}

/** What a word that the dictionary lacks may be made of: "apáguelo" of "apague". */
function stemsOf(word: string, language: string): readonly string[] {
  if (language === 'en') return [word.replace(/'s$/, '')];
  if (language === 'fr') return [word.replace(/^.*'/, '')];
  // "And", "with", "for" and the article are written to the word's beginning.
  if (language === 'ar') return [word.replace(/^[وف]?[بلك]?(?:ال)?/, '')];
  if (language !== 'es') return [];
  // With pronouns a command and a gerund bear a written accent, an infinitive with one does not.
  return ENCLITICS.map((end) => word.replace(end, ''))
    .filter((stem) => stem !== word && (/[áéíóú]/.test(stem) || /[aei]r$/.test(stem)))
    .map(plain);
}

function wrongWords(language: string): string[] {
  const own = content().ownWords();
  const known = new Set(
    own.ok ? ['all', 'panel', language].flatMap((list) => own.value[list] ?? []) : [],
  );
  const isOwn = (word: string) =>
    known.has(word) || known.has(word.charAt(0).toLowerCase() + word.slice(1));
  const words = wordsOf(language);
  expect(words.size).toBeGreaterThan(100);
  const first = [...unknown([...words.keys()], language)].map(
    (word) => [word, stemsOf(word, language)] as const,
  );
  const still = unknown(
    first.flatMap(([, stems]) => stems),
    language,
  );
  return first
    .filter(([word, stems]) => ![word, ...stems].some(isOwn))
    .filter(([, stems]) => stems.every((stem) => still.has(stem)))
    .map(([word]) => `${word} (${words.get(word) ?? ''})`);
}

/** Not yet, where a language lacks sentences that no copy can be without; EVERY=1 asks of it, too. */
function isWhole(language: string): boolean {
  if (languages().includes(language) || process.env['EVERY'] !== undefined) return true;
  const report = languageReport(content(), language);
  return report.ok && !report.value.problems.some(({ code }) => code === 'safety-missing');
}

const absent = missing('Hunspell').length > 0 && process.env['CI'] === undefined;

describe('spelling', () => {
  for (const language of Object.keys(DICTIONARIES))
    it.skipIf(absent || !isWhole(language))(`${language}: every word is one`, () => {
      expect(wrongWords(language)).toEqual([]);
    });

  it.skipIf(absent)('tells a word that is none, and forgives no Spanish verb its accent', () => {
    expect([...unknown(['door', 'dooor'], 'en')]).toEqual(['dooor']);
    expect(stemsOf('apáguelo', 'es')).toContain('apague');
    expect(stemsOf('caliéntelo', 'es')).toContain('caliente');
    expect(stemsOf('dárselo', 'es')).toContain('dar');
    expect(stemsOf('apaguelo', 'es')).toEqual([]);
  });
});
