// Releases of a small site, made of the built one as the build makes them. For any test runner.
import { cp, mkdtemp, readFile, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { Page } from '@playwright/test';
import { releases } from '../../../src/content/load.ts';
import type { Packed } from '../../../src/offline/worker/bundle.ts';
import { keepOffline, type CopyFacts } from '../../../src/site/build/keep-offline.ts';
import { doorLocked, guides } from './shortest-journeys.ts';
import { isForeign, pagesOf } from './site.ts';

/** Folders and data of guides but the locked door. */
const OTHER_GUIDES = new RegExp(
  `^(?:_astro/\\w+/)?(?:${guides
    .filter(({ id }) => id !== doorLocked().id)
    .map(({ id }) => id)
    .join('|')})(?:[/.]|$)`,
);
/** What the build puts into pages that readers come to first, kept ones apart. */
export const AHEAD = /(?<=<head) data-ahead="[^"]*"/;
/** What is made anew for a copy, and its compressed twins. */
const REMADE = /^(?:sw\.js|_astro\/kept\/)/;

/** A copy of the built site with one guide and one language, made as the build would. */
export async function copyOf(without?: RegExp): Promise<string> {
  const site = process.env['SITE_DIR'] ?? 'dist';
  const copy = await mkdtemp(join(tmpdir(), 'hobnote-copy-'));
  const wanted = (path: string) =>
    !isForeign(path) &&
    !OTHER_GUIDES.test(path) &&
    !REMADE.test(path) &&
    without?.test(path) !== true;
  await cp(site, copy, {
    recursive: true,
    // Compressed twins are taken for the files' own by their times.
    preserveTimestamps: true,
    filter: (path) => wanted(relative(site, path)),
  });
  for (const path of pagesOf(copy).filter((path) => path.endsWith('/'))) {
    const file = join(copy, path, 'index.html');
    const page = await readFile(file, 'utf8');
    const plain = page.replace(AHEAD, '');
    if (plain !== page) await writeFile(file, plain);
  }
  return copy;
}

/** The bundles that a worker keeps, the default language's or that of a folder: file → what it holds. */
export async function bundlesOf(dir: string, scope = ''): Promise<ReadonlyMap<string, Packed>> {
  const worker = await readFile(join(dir, scope, 'sw.js'), 'utf8');
  const names = [...worker.matchAll(/_astro\/kept\/[\w.-]+\.json/g)].map(([name]) => name);
  const read = async (name: string) =>
    [name, JSON.parse(await readFile(join(dir, name), 'utf8')) as Packed] as const;
  return new Map(await Promise.all(names.map(read)));
}

/** Resolves once a release is in use and kept whole, staff's part too where that is asked for. */
export const kept = (page: Page, staff = false) =>
  page.evaluate(
    async (whole) => {
      const { scope } = await navigator.serviceWorker.ready;
      const missing = async () =>
        (await (await caches.match(new URL('sw.js?missing', scope)))?.text()) ?? '';
      while (!whole.includes(await missing())) await new Promise((done) => setTimeout(done, 20));
    },
    ['[]', ...(staff ? [] : ['["staff"]'])],
  );

/** The release of the content as it is. */
export const newest = releases().length;
const facts: CopyFacts = {
  release: newest,
  built: new Date().toISOString().slice(0, 10),
  renewAfter: 90,
  recall: { least: 1, pages: [] },
};

/** A release of its own, every page marked so that tests see which one it is of (`main[data-mark]`). */
export async function makeRelease(
  mark: string,
  own: Partial<CopyFacts> = {},
  without: readonly string[] = [],
): Promise<string> {
  const dir = await copyOf(/\.(?:br|gz)$/);
  for (const path of pagesOf(dir)) {
    const file = join(dir, path.endsWith('/') ? `${path}index.html` : path);
    const html = await readFile(file, 'utf8');
    await writeFile(file, html.replace('<main', `<main data-mark="${mark}"`));
  }
  for (const page of without) await rm(join(dir, page), { recursive: true });
  await keepOffline(dir, { ...facts, ...own });
  return dir;
}
