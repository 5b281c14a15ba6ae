// Sentences that no code asks for would be translated, checked and sent to browsers all the same.
// Whether a key is asked for is seen by the texts in the code: the key itself, with its namespace
// or without, or a template that makes it of words in the code. A key that passes here may still
// be dead; one that fails is.
import { globSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { guides, textFile } from '../../../src/content/load.ts';
import { SOURCE, namespaces } from '../../../src/content/texts.ts';
import { groups } from '../../../src/visit/staff-view.ts';

function textsIn(files: string, text: RegExp): Set<string> {
  const code = globSync(files).map((file) => readFileSync(file, 'utf8'));
  return new Set(code.flatMap((one) => [...one.matchAll(text)].map(([, found = '']) => found)));
}
/** Words and keys, also as names of an object's fields. */
const literals = textsIn(
  'src/**/*.{ts,tsx,astro}',
  /['"`]?((?<=['"`])[\w:.-]+(?=['"`])|\b\w+(?=:))/g,
);
const templates = [
  ...textsIn('src/{app,offline,pages,site}/**/*.{ts,tsx,astro}', /`([^`\s]*\$\{[^`]*)`/g),
]
  .map((key) => key.replace(/\$\{(?:[^{}]|\{[^{}]*\})*\}/g, '*'))
  .filter((key) => /^[\w:.*-]+$/.test(key) && /[a-z]{3}/i.test(key))
  .map((key) => new RegExp(`^${key.replaceAll('.', String.raw`\.`).replaceAll('*', '(.+)')}$`));

/** What a template is filled with are words of the code, or made by another template. */
function isMade(key: string): boolean {
  return templates.some((template) => {
    const filled = template.exec(key)?.slice(1);
    return (
      filled?.every((text) => literals.has(text) || (text.includes('.') && isMade(text))) ?? false
    );
  });
}

/** Keys of sentences and of lists. */
function keysOf(value: unknown, path: string): string[] {
  if (typeof value === 'string' || Array.isArray(value)) return [path];
  return Object.entries(value as object).flatMap(([key, inner]) =>
    keysOf(inner, path === '' ? key : `${path}.${key}`),
  );
}

function isAskedFor(namespace: string, key: string): boolean {
  const plain = key.replace(/_(?:zero|one|two|few|many|other)$/, '');
  const names = [plain, `${namespace}:${plain}`];
  return names.some((name) => literals.has(name) || isMade(name));
}

/** Asked for by ids of content: the gate `sentences` holds these to their ids. */
const BY_ID =
  /^(?:care:topics|guides:(?:groups|sayings|names)|(?:note|preview):details|preview:demo\.list|diagnosis:(?:access|tools|skills|cautions|parts))\./;

describe('the sentences of the pages', () => {
  it.each(namespaces)('are all asked for by some code: %s', (namespace) => {
    const keys = keysOf(textFile(SOURCE, namespace), '');
    expect(keys.length).toBeGreaterThan(0);
    const flags = guides()[0]?.flags ?? [];
    const byId = [...flags.map((id) => `flags.${id}`), ...groups.map((id) => `groups.${id}`)];
    const dead = keys.filter(
      (key) =>
        !BY_ID.test(`${namespace}:${key}`) && !byId.includes(key) && !isAskedFor(namespace, key),
    );
    expect(dead).toEqual([]);
  });
});
