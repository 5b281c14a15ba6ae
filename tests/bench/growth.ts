import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';
import { guides as publishedGuides } from '../../src/content/load.ts';
import { bundlesOf } from '../browser/support/releases.ts';
import { pagesOf } from '../browser/support/site.ts';
import { buildWith, madeUp } from './made-up.ts';
import type { Row } from './row.ts';

/** The plan's ceiling: six guides in three languages, on two cores. */
const CEILING = { guides: 6, languages: 3, seconds: 60 };
/** About as many pages as a published guide has. */
const USUAL = 40;
const LANGUAGES = ['xa', 'xb', 'xc'];

interface Built {
  readonly guides: number;
  readonly languages: number;
  readonly seconds: number;
  readonly pages: number;
  readonly bytes: number;
}

/** Bytes as stored, compressed copies not counted. */
async function bytesIn(dist: string): Promise<number> {
  const entries = await readdir(dist, { recursive: true, withFileTypes: true });
  const files = entries.filter((entry) => entry.isFile() && !/\.(?:br|gz)$/.test(entry.name));
  const sizes = await Promise.all(
    files.map(async ({ parentPath, name }) => (await stat(join(parentPath, name))).size),
  );
  return sizes.reduce((sum, size) => sum + size, 0);
}

/** What one reader keeps: the bundles of the default language say how much that is. */
async function keptIn(dist: string): Promise<number> {
  const bundles = [...(await bundlesOf(dist)).values()];
  return bundles.flatMap(({ files }) => files).reduce((sum, [, bytes]) => sum + bytes, 0);
}

/** Build time and size by guides and languages: the published guides, more made up, in copies of English. */
export async function benchGrowth(): Promise<Row[]> {
  const published = publishedGuides().length;
  const counts = [published, Math.max(7, published + 2)];
  const sizes = [...counts.flatMap((guides) => [1, 2, 4].map((many) => [guides, many] as const))];
  if (!counts.includes(CEILING.guides) && CEILING.guides > published)
    sizes.push([CEILING.guides, CEILING.languages]);
  else sizes.push([published, CEILING.languages]);
  const rows: Row[] = [];
  const all: Built[] = [];
  for (const [guides, languages] of sizes) {
    const more = Array.from({ length: guides - published }, (_, i) => madeUp(`more-${i}x`, USUAL));
    const built = await buildWith(more, LANGUAGES.slice(0, languages - 1));
    try {
      const pages = pagesOf(built.dist).length;
      const bytes = await bytesIn(built.dist);
      all.push({ guides, languages, seconds: built.seconds, pages, bytes });
      const name = `${guides} guides × ${languages} languages`;
      const bounded =
        guides <= Math.max(CEILING.guides, published) && languages <= CEILING.languages;
      rows.push(
        {
          name: `${name}: build`,
          value: built.seconds,
          unit: 's',
          ...(bounded ? { ceiling: CEILING.seconds } : {}),
          note: `${pages} pages`,
        },
        { name: `${name}: size`, value: bytes / 1000, unit: 'kB', note: 'not compressed' },
        { name: `${name}: kept by a reader`, value: (await keptIn(built.dist)) / 1000, unit: 'kB' },
      );
    } finally {
      await built.remove();
    }
  }
  const [least, most] = [all[0], all.toSorted((a, b) => b.pages - a.pages)[0]];
  if (least && most && most.pages > least.pages)
    rows.push({
      name: 'one more page: build',
      value: ((most.seconds - least.seconds) / (most.pages - least.pages)) * 1000,
      unit: 'ms',
      note: `from ${least.pages} to ${most.pages} pages`,
    });
  return rows;
}
