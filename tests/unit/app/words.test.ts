// i18next, the library the sentences are written for, is the reference for the small reader of
// them that runs in the browser.
import i18next from 'i18next';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { makeWords } from '../../../src/app/shared/words.ts';

const names = ['note', 'site'] as const;
const texts = Object.fromEntries(
  names.map((name) => [
    name,
    JSON.parse(readFileSync(`content/text/en/${name}.json`, 'utf8')) as Record<string, unknown>,
  ]),
);
const words = makeWords({ language: 'en', texts });
const reference = i18next.createInstance({
  lng: 'en',
  ns: names,
  defaultNS: 'note',
  resources: { en: texts },
  initAsync: false,
  interpolation: { escapeValue: false },
});
void reference.init();

function keysOf(value: unknown, path: string): string[] {
  if (typeof value === 'string') return [path];
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    keysOf(inner, path.endsWith(':') ? path + key : `${path}.${key}`),
  );
}

describe('sentences in the browser', () => {
  it('says what i18next says, for every key', () => {
    const keys = names.flatMap((name) => keysOf(texts[name], `${name}:`));
    expect(keys.length).toBeGreaterThan(100);
    const from = reference.t as unknown as (key: string, facts?: object) => string;
    for (const key of keys) {
      const sentence = from(key);
      const facts = Object.fromEntries(
        [...sentence.matchAll(/\{\{(\w+)\}\}/g)].map(([, fact = '']) => [fact, `<${fact}> $&`]),
      );
      expect(words.t(key, facts)).toBe(from(key, facts));
    }
  });

  it.each([0, 1, 2, 21])('counts %i as i18next does', (count) => {
    expect(words.t('site:timer.minutes', { count })).toBe(
      reference.t('site:timer.minutes', { count }),
    );
  });

  it('counts by the rules of the language', () => {
    // Arabic has six forms; CLDR: 3 is "few", 11 is "many".
    const arabic = makeWords({
      language: 'ar',
      texts: { n: { x_few: 'few {{count}}', x_many: 'many', x_other: 'other' } },
    });
    expect([3, 11, 100].map((count) => arabic.t('x', { count }))).toEqual([
      'few 3',
      'many',
      'other',
    ]);
  });

  it('throws on a key or a fact that is missing, and never finds what objects inherit', () => {
    expect(() => words.t('nothing')).toThrow('nothing');
    expect(() => words.t('pass.shareText')).toThrow('{{code}}');
    expect(() => words.t('pass.shareText', { other: 1 })).toThrow('{{code}}');
    expect(() => words.list('title')).toThrow('title');
    for (const key of [
      'constructor',
      'constructor.name',
      'title.length',
      '__proto__:x',
      'none:title',
    ])
      expect(words.has(key), key).toBe(false);
    expect(words.has('title')).toBe(true);
    expect(words.list('digits')).toHaveLength(10);
  });
});
