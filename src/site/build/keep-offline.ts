import { createHash } from 'node:crypto';
import { readFile, readdir, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'vite';
import { firm, guides, recall, releases } from '../../content/load.ts';
import type { RecallFile } from '../../content/schema/recall.ts';
import { ownNodes } from '../../guide/ids.ts';
import type { Guide } from '../../guide/types.ts';
import { isGuarded } from '../walks.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const WORKERS = join(root, 'src/offline/worker');

/** Not kept: copies of kept files, what is for machines only, and the page for unknown addresses. */
const LEFT_OUT =
  /\.(?:br|gz)$|^index\.[a-z]{2}\.html$|^_headers$|^schema\/|^licences\.txt$|^404\.html$|(?:^|\/)(?:sw\.js|(?:precache|recall|learn)\.json)$/;

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

/** The day of the build, or the one reproducible builds are told (SOURCE_DATE_EPOCH). */
function today(): string {
  const epoch = process.env['SOURCE_DATE_EPOCH'];
  const now = epoch === undefined ? new Date() : new Date(Number(epoch) * 1000);
  return now.toISOString().slice(0, 10);
}

const ofContent = (): CopyFacts => ({
  release: releases().length,
  built: today(),
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

/**
 * Puts `sw.js`, `precache.json` and `recall.json` beside every language's manifest. The list holds every file
 * the language's pages need: its own pages, manifest and parts, and all that has no language.
 * Own code and not workbox-build: it lists MD5 revisions for one scope and brings Babel and Rollup
 * for it, where the worker here checks each file's SHA-256 and every language has a scope.
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
  for (const scope of scopes) {
    const kept = files.filter(
      (file) =>
        (!/\.(?:html|webmanifest)$/.test(file) || scopeOf(file) === scope) && isOf(scope, file),
    );
    const listed: Record<string, string> = {};
    let bytes = 0;
    for (const file of kept) {
      const data = await readFile(join(dist, file));
      // The address from the scope: a language's folder lies one below the shared files.
      const address = file.startsWith(scope) ? file.slice(scope.length) : `../${file}`;
      listed[address.replace(/(^|\/)index\.html$/, '$1')] = digest(data);
      bytes += data.length;
    }
    const list = JSON.stringify({ bytes, files: listed });
    await writeFile(join(dist, scope, 'precache.json'), list);
    await writeFile(
      join(dist, scope, 'sw.js'),
      await bundle('worker.ts', { RELEASE: digest(list), COPY }),
    );
    await writeFile(join(dist, scope, 'recall.json'), JSON.stringify(facts.recall));
  }
}
