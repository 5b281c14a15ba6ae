// What the sources say against what English has: read as text, by the form of a key in quotes.
import { existsSync, globSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { namespaces } from '../../../src/content/texts.ts';

const KEY = new RegExp(`['\`]((?:${namespaces.join('|')}):(?:[\\w.-]|\\$\\{[^}]*\\})+)['\`]`, 'g');
const keysIn = (source: string) => [...source.matchAll(KEY)].map(([, key = '']) => key);
const read = (path: string) => readFileSync(path, 'utf8');

/** A file and all it imports, at once or on demand; types are gone when the page runs. */
function reached(path: string, seen = new Set<string>()): Set<string> {
  if (seen.has(path) || !existsSync(path)) return seen;
  seen.add(path);
  const source = read(path).replaceAll(/import type [^;]*;/g, '');
  for (const [, to = ''] of source.matchAll(/(?:from|import\(?) ?'(\.[^']*\.tsx?)'/g))
    reached(join(dirname(path), to), seen);
  return seen;
}

const pages = globSync('src/pages/**/*.astro')
  .map((path) => ({ path, source: read(path) }))
  .filter(({ source }) => source.includes('<Words'));

describe('the sentences of a page that scripts draw', () => {
  it.each(pages)('are all carried: $path', ({ path, source }) => {
    const listed = (prop: string) => {
      const [, list = ''] = new RegExp(`<Words[^>]*${prop}=\\{\\[([^\\]]*)\\]`).exec(source) ?? [];
      return [...list.matchAll(/'([^']+)'/g)].map(([, name = '']) => name);
    };
    const [carried, except] = [listed('names'), listed('except')];
    const [, start = ''] = /import '([^']*\/start\.tsx)'/.exec(source) ?? [];
    const files = [...reached(join(dirname(path), start))];
    const said = [...new Set(files.flatMap((file) => keysIn(read(file))))];
    expect(said.length).toBeGreaterThan(20);
    const lacking = said.filter((key) => {
      const [namespace = '', first = ''] = key.split(/[:.]/);
      const part = `${namespace}:${first}`;
      return except.includes(part) || !(carried.includes(namespace) || carried.includes(part));
    });
    expect(lacking).toEqual([]);
  });
});

/** Named by content, and asked for in `content-words.ts`, `staff-words.ts` and `site/care.ts`. */
const BY_CONTENT =
  /^(?:guides:(?:groups|names|sayings)|(?:note|preview):details|preview:flags|preview:demo\.list|diagnosis:(?:access|cautions|parts|places|skills|tools)|care:topics)\./;

function pathsOf(value: unknown, path: string): string[] {
  if (typeof value === 'string' || Array.isArray(value))
    return [path.replace(/_(?:zero|one|two|few|many|other)$/, '')];
  return Object.entries(value as object).flatMap(([key, inner]) =>
    pathsOf(inner, path.endsWith(':') ? path + key : `${path}.${key}`),
  );
}

it('every English sentence is said somewhere', () => {
  const sources = globSync('src/{app,site,pages}/**/*.{ts,tsx,astro}').map(read);
  const said = [...new Set(sources.flatMap(keysIn))].map(
    (key) => new RegExp(`^${key.replaceAll('.', '\\.').replaceAll(/\$\{[^}]*\}/g, '[^.]+')}$`),
  );
  const all = namespaces.flatMap((name) =>
    pathsOf(JSON.parse(read(`content/text/en/${name}.json`)), `${name}:`),
  );
  expect(all.length).toBeGreaterThan(700);
  const silent = all.filter((key) => !BY_CONTENT.test(key) && !said.some((one) => one.test(key)));
  expect([...new Set(silent)]).toEqual([]);
});
