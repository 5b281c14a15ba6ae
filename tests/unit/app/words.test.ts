// i18next, the library the sentences are written for, is the reference for the small reader of
// them that runs in the browser.
import i18next from 'i18next';
import { readFileSync } from 'node:fs';
import { describe, expect, expectTypeOf, it } from 'vitest';
import type { GraphNode } from '../../../src/guide/types.ts';
import { answerWords, nodeWords } from '../../../src/app/shared/content-words.ts';
import { name } from '../../../src/app/shared/staff-words.ts';
import type { Key, ListKey, Namespace } from '../../../src/app/shared/keys.ts';
import { makeWords, type Words } from '../../../src/app/shared/words.ts';
import type { namespaces } from '../../../src/content/texts.ts';

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
  resources: { en: texts },
  initAsync: false,
  interpolation: { escapeValue: false },
});
void reference.init();

function keysOf(value: unknown, path: string): Key[] {
  if (typeof value === 'string') return [path as Key];
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    keysOf(inner, path.endsWith(':') ? path + key : `${path}.${key}`),
  );
}

describe('sentences in the browser', () => {
  it('says what i18next says, for every key', () => {
    const keys = names.flatMap((name) => keysOf(texts[name], `${name}:`));
    expect(keys.length).toBeGreaterThan(100);
    for (const key of keys) {
      const sentence = reference.t(key);
      const facts = Object.fromEntries(
        [...sentence.matchAll(/\{\{(\w+)\}\}/g)].map(([, fact = '']) => [fact, `<${fact}> $&`]),
      );
      expect(words.t(key, facts)).toBe(reference.t(key, facts));
    }
  });

  it.each([0, 1, 2, 21])('counts %i as i18next does', (count) => {
    expect(words.t('site:timer.minutes', { count })).toBe(
      reference.t('site:timer.minutes', { count }),
    );
  });

  it('counts by the rules of the language', () => {
    // Arabic has six forms; CLDR: 3 is "few", 11 is "many".
    const minutes = { minutes_few: 'few {{count}}', minutes_many: 'many', minutes_other: 'other' };
    const arabic = makeWords({ language: 'ar', texts: { site: { timer: minutes } } });
    expect([3, 11, 100].map((count) => arabic.t('site:timer.minutes', { count }))).toEqual([
      'few 3',
      'many',
      'other',
    ]);
  });

  it('throws on a fact that is missing, and on a namespace that the page does not carry', () => {
    expect(() => words.t('note:message.code')).toThrow('{{code}}');
    expect(() => words.t('note:message.code', { other: 1 })).toThrow('{{code}}');
    expect(() => words.t('desk:title')).toThrow('desk:title');
    expect(() => words.list('about:is.lines')).toThrow('about:is.lines');
    expect(words.list('note:digits')).toHaveLength(10);
  });
});

describe('sentences under content’s own names', () => {
  const start = { id: 'start', sentences: 'start' } as unknown as GraphNode;
  const guide = { id: 'here', start: start.id, nodes: new Map([[start.id, start]]) };
  const content = makeWords({
    language: 'en',
    texts: {
      here: {
        ask: { title: 'Ask', lines: ['One'], answers: { yes: 'Yes' } },
        start: { answers: { fire: 'Fire' } },
      },
      there: { ask: { title: 'Other' } },
      diagnosis: { parts: { latch: 'Latch' } },
      model: { faults: { bent: { name: 'Bent' } } },
    },
  });

  it('are a node’s, of its own guide or of the one it is handed over to', () => {
    expect(nodeWords(content, guide, { sentences: 'ask' })).toMatchObject({
      title: 'Ask',
      short: 'ask',
      lines: ['One'],
      never: [],
    });
    expect(nodeWords(content, guide, { sentences: 'there/ask' }).title).toBe('Other');
    expect(answerWords(content, guide, { sentences: 'ask' }, 'yes')).toBe('Yes');
    expect(answerWords(content, guide, { sentences: 'ask' }, 'fire')).toBe('Fire');
  });

  it('are the model’s for faults and checks, the diagnosis’ for the rest', () => {
    expect(name(content, 'faults', 'bent')).toBe('Bent');
    expect(name(content, 'parts', 'latch')).toBe('Latch');
  });

  it('are never what objects inherit: a name may come from an address', () => {
    const inherited = ['constructor', '__proto__', 'toString', 'length'];
    for (const id of inherited) {
      expect(name(content, 'parts', id)).toBe(id);
      expect(nodeWords(content, { id }, { sentences: id }).title).toBe(id);
      expect(content.content('diagnosis', 'parts', 'latch', id)).toBeUndefined();
    }
  });
});

// Compiled, never run: `npm run types` fails where one of these compiles that should not.
describe('keys', () => {
  it('are those of the English sentences', () => {
    expectTypeOf<Namespace>().toEqualTypeOf<(typeof namespaces)[number]>();
    expectTypeOf<'note:title' | 'desk:say.danger'>().toExtend<Key>();
    // Counted forms are one key.
    expectTypeOf<'preview:plan.minutes'>().toExtend<Key>();
    expectTypeOf<'preview:plan.minutes_one'>().not.toExtend<Key>();
    expectTypeOf<'note:digits'>().toExtend<ListKey>();
  });

  it('do not compile where they name no sentence', () => {
    const wrong = ({ t, list }: Words, id: string) => [
      // @ts-expect-error -- no such key
      t('note:nothing'),
      // @ts-expect-error -- another namespace's
      t('desk:message.code'),
      // @ts-expect-error -- no namespace
      t('title'),
      // @ts-expect-error -- a group, not a sentence
      t('note:pass'),
      // @ts-expect-error -- a list, not a sentence
      t('note:digits'),
      // @ts-expect-error -- a sentence, not a list
      list('note:title'),
      // @ts-expect-error -- what content names is asked for in `content-words.ts`
      t(`note:details.${id}.label`),
    ];
    expect(wrong).toBeTypeOf('function');
  });
});
