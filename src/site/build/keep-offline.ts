import { createHash } from 'node:crypto';
import { mkdir, readFile, readdir, writeFile } from 'node:fs/promises';
import { basename, dirname, extname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { firm, guides, recall, releases } from '../../content/load.ts';
import type { RecallFile } from '../../content/schema/recall.ts';
import { ownNodes } from '../../guide/ids.ts';
import type { Guide } from '../../guide/types.ts';
import { TYPES, headersFor, parseHeaders, type HeaderRule } from '../../headers.ts';
import { STAFF, STAFF_PAGES, type Bundle, type Packed } from '../../offline/worker/bundle.ts';
import type { Release } from '../../offline/worker/release.ts';
import { guidesInOrder, mainGuide } from '../finder.ts';
import { hashedName } from '../hashed.ts';
import { isGuarded } from '../walks.ts';
import { pack } from './pack.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const WORKERS = join(root, 'src/offline/worker');

/** Where bundles are; named by their content, as all in `_astro`. */
const FOLDER = '_astro/kept';

/**
 * Not kept: copies of kept files, what is for machines only, icons that only an installed app has,
 * pages nobody needs beside a range, and the page for unknown addresses.
 */
const LEFT_OUT =
  /\.(?:br|gz)$|^index\.[a-z]{2}\.html$|^_headers$|^schema\/|^licences\.txt$|^404\.html$|^icon-.*512\.png$|^_astro\/kept\/|(?:^|\/)(?:map|learn|safety)\/|(?:^|\/)(?:sw\.js|(?:recall|learn)\.json)$/;

/** What guides lead to; of all else there is time until these are kept. */
const WITH_GUIDES = /^(?:(?:note|recalled|renew)\/)?$|\.(?:svg|webmanifest)$/;
/** Scripts, styles and data, seen from any scope. */
const IN_PARTS = /(?:^|\/)_astro\//;
/** Guides that have a page alike, so that all have a use for it. */
const MANY = 4;

/** SHA-256 in base 64. */
const digest = (data: string | Buffer): string =>
  createHash('sha256').update(data).digest('base64');

/** What a copy of the site knows of itself. */
export interface CopyFacts {
  readonly release: number;
  /** ISO 8601 date. */
  readonly built: string;
  readonly renewAfter: number;
  readonly recall: RecallFile;
}

const ofContent = (): CopyFacts => ({
  release: releases().length,
  // The day of the build, or the one reproducible builds are told.
  built: new Date(Number(process.env['SOURCE_DATE_EPOCH'] ?? Date.now() / 1000) * 1000)
    .toISOString()
    .slice(0, 10),
  renewAfter: firm()['renew-after'],
  recall: recall(),
});

/** Pages at which an answer follows something done to heat, a breaker or a door. */
export const hazardsOf = (guide: Guide): readonly string[] =>
  ownNodes(guide)
    .filter(isGuarded)
    .map(({ id }) => `${guide.id}/${id}/`);

/** A worker as one file, what the build knows put in. */
export async function bundle(
  entry: 'worker.ts' | 'closing.ts',
  known: Readonly<Record<string, unknown>>,
): Promise<string> {
  const define = Object.entries(known).map(([name, value]) => [name, JSON.stringify(value)]);
  const built = await build({
    configFile: false,
    root,
    logLevel: 'warn',
    define: Object.fromEntries(define) as Record<string, string>,
    build: {
      write: false,
      lib: { entry: join(WORKERS, entry), formats: ['iife'], name: 'worker' },
    },
  });
  const output = Array.isArray(built) ? built.flatMap((one) => one.output) : [];
  const chunk = output.find((one) => one.type === 'chunk');
  if (chunk?.type !== 'chunk') throw new Error('The worker was not built.');
  return chunk.code;
}

interface Kept {
  /** Address from the scope. */
  readonly address: string;
  readonly data: Buffer;
  /** Place of its headers among the release's. */
  readonly kind: number;
}

/** Names of the files of `_astro` that some pages load, at once or on demand. */
function loadedBy(pages: readonly Buffer[], parts: ReadonlyMap<string, Buffer>): Set<string> {
  const found = new Set<string>();
  const left = [...pages];
  for (let next = left.pop(); next; next = left.pop())
    for (const [name] of next.toString('latin1').matchAll(/[\w-]+(?:\.[\w-]+)+/g)) {
      const part = parts.get(name);
      if (!part || found.has(name)) continue;
      found.add(name);
      left.push(part);
    }
  return found;
}

/**
 * What a bundle is for: a guide by its name, what every page shares, or the rest; undefined for what
 * no page that is kept loads.
 */
function sorter(kept: readonly Kept[]): (address: string) => string | undefined {
  const inParts = kept.filter(({ address }) => IN_PARTS.test(address));
  const parts = new Map(inParts.map(({ address, data }) => [basename(address), data]));
  const pages = kept.filter(({ address }) => address === '' || address.endsWith('/'));
  const loaded = (staff: boolean) =>
    loadedBy(
      pages.filter(({ address }) => STAFF_PAGES.test(address) === staff).map(({ data }) => data),
      parts,
    );
  const [byAll, byStaff] = [loaded(false), loaded(true)];
  return (address) => {
    if (IN_PARTS.test(address)) {
      const name = basename(address);
      if (!byAll.has(name)) return byStaff.has(name) ? STAFF : undefined;
      // The main guide's note tells the others' bundles most of theirs.
      const [, ...others] = guidesInOrder().map(({ id }) => id);
      return others.find((id) => name.startsWith(`${id}.note.`)) ?? 'shared';
    }
    if (STAFF_PAGES.test(address)) return STAFF;
    const [, guide = '', page = ''] = /^([\w-]+)\/([\w-]+)\/$/.exec(address) ?? [];
    const has = (one: Guide) => ownNodes(one).some(({ id }) => id === page);
    const among = page === '' ? [] : guides().filter(has);
    if (!among.some(({ id }) => id === guide)) return WITH_GUIDES.test(address) ? 'shared' : 'rest';
    // Pages that guides share are alike: those of one tell the others' bundles most of theirs.
    return guide === mainGuide().id && among.length >= MANY ? 'shared' : guide;
  };
}

/** The headers that a host which reads `_headers` gives a file, as far as a kept one needs them, in JSON. */
function headersOf(rules: readonly HeaderRule[], file: string): string {
  const kind = TYPES.get(extname(file)) ?? 'application/octet-stream';
  const path = `/${file.replace(/(^|\/)index\.html$/, '$1')}`;
  const { 'cache-control': _, ...given } = Object.fromEntries(headersFor(rules, path));
  const type = kind.startsWith('image/') ? kind : `${kind};charset=utf-8`;
  return JSON.stringify({ ...given, 'content-type': type });
}

/**
 * Puts `sw.js` and `recall.json` beside every language's manifest, and the bundles it keeps in a folder of
 * all. They hold every file the language's pages need: its own pages, manifest and parts, and all
 * that has no language.
 * Own code and not workbox-build: it fetches file by file, lists MD5 revisions for one scope and
 * brings Babel and Rollup for it, where the worker here checks SHA-256 and every language has a scope.
 *
 * @param dist the built site
 */
export async function keepOffline(dist: string, facts = ofContent()): Promise<void> {
  const entries = await readdir(dist, { recursive: true, withFileTypes: true });
  const files = entries
    .filter((entry) => entry.isFile())
    .map((entry) => relative(dist, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .filter((file) => !LEFT_OUT.test(file))
    .sort();
  const scopes = files
    .filter((file) => file.endsWith('manifest.webmanifest'))
    .map((file) => (dirname(file) === '.' ? '' : `${dirname(file)}/`));
  if (scopes.length === 0) throw new Error('No language has a manifest: nothing would be kept.');
  const scopeOf = (file: string): string | undefined =>
    scopes.filter((scope) => file.startsWith(scope)).sort((a, b) => b.length - a.length)[0];

  // Parts loaded on demand lie in a folder of their language; the default one has no scope of its own.
  const isOf = (scope: string, file: string): boolean => {
    const [, language] = /^_astro\/([a-z]{2})\//.exec(file) ?? [];
    if (language === undefined) return true;
    return scopes.includes(`${language}/`) ? scope === `${language}/` : scope === '';
  };

  const COPY = {
    ...facts,
    starts: guides().map(({ id, start }) => `${id}/${start}/`),
    hazards: guides().flatMap(hazardsOf),
  };
  const rules = parseHeaders(await readFile(join(dist, '_headers'), 'utf8').catch(() => ''));
  await mkdir(join(dist, FOLDER), { recursive: true });
  for (const scope of scopes) {
    const kept = files.filter(
      (file) =>
        (!/\.(?:html|webmanifest)$/.test(file) || scopeOf(file) === scope) && isOf(scope, file),
    );
    const up = '../'.repeat(scope.split('/').length - 1);
    const kinds = [...new Set(kept.map((file) => headersOf(rules, file)))];
    const all = await Promise.all(
      kept.map(async (file): Promise<Kept> => {
        // The address from the scope: a language's folder lies one below the shared files.
        const path = file.startsWith(scope) ? file.slice(scope.length) : up + file;
        const address = path.replace(/(^|\/)index\.html$/, '$1');
        const kind = kinds.indexOf(headersOf(rules, file));
        return { address, kind, data: await readFile(join(dist, file)) };
      }),
    );
    const bundleOf = sorter(all);
    const bundles = Map.groupBy(all, ({ address }) => bundleOf(address));
    const BUNDLES: Bundle[] = [];
    let before: Buffer = Buffer.of();
    // After the two the rest, which is largest: it takes longest to come.
    for (const name of new Set(['shared', mainGuide().id, 'rest', ...bundles.keys()])) {
      if (name === undefined) continue;
      const some = bundles.get(name) ?? [];
      const data = Buffer.concat(some.map((file) => file.data));
      const packed: Packed = {
        files: some.map(({ address, data: { length }, kind }) => [address, length, kind]),
        ...{ hash: digest(data), ...pack(data, name === STAFF ? Buffer.of() : before) },
      };
      const text = JSON.stringify(packed);
      const path = `${FOLDER}/${hashedName(name, text)}.json`;
      await writeFile(join(dist, path), text);
      BUNDLES.push({ name, path: up + path, hash: digest(text), bytes: data.length });
      if (name === 'shared') before = data;
    }
    for (const { address, data } of all) {
      if (address !== '' && !COPY.starts.includes(address)) continue;
      // Pages that readers come to first say what to ask for at once; kept ones need not.
      const own = BUNDLES.find(({ name }) => address.startsWith(`${name}/`)) ?? BUNDLES[1];
      const root = '../'.repeat(address.split('/').length - 1);
      const ahead = [BUNDLES[0], own].map((bundle) => root + (bundle?.path ?? '')).join(' ');
      const page = data.toString().replace('<head', `$& data-ahead="${ahead}"`);
      await writeFile(join(dist, scope, address, 'index.html'), page);
    }
    const HEADERS = kinds.map((text) => JSON.parse(text) as Release['headers'][number]);
    const RELEASE = digest(JSON.stringify([BUNDLES, HEADERS]));
    const known = { BUNDLES, HEADERS, RELEASE, COPY };
    await writeFile(join(dist, scope, 'sw.js'), await bundle('worker.ts', known));
    await writeFile(join(dist, scope, 'recall.json'), JSON.stringify(facts.recall));
  }
}
