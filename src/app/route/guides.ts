/** What the route needs of each guide, fetched once: figures and words. */
import type { Figures } from '../../visit/read-visit.ts';
import { fetchData } from '../shared/fetched.ts';
import { pageWords, type Words } from '../shared/words.ts';
import type { PreviewPart } from '../preview/page.ts';

export interface KnownGuide {
  readonly figures: Figures;
  readonly words: Words;
}

export interface Guides {
  /** Fetch what is not there yet; the guides that could not be had. */
  need(guides: readonly string[]): Promise<readonly string[]>;
  /** Undefined for a guide that the site no longer has, or that could not be had. */
  known(guide: string): KnownGuide | undefined;
}

function made({ texts, ...figures }: PreviewPart): KnownGuide {
  return { figures, words: pageWords(texts) };
}

/** @param files guide → the address of its part */
export function makeGuides(files: Readonly<Record<string, string>>): Guides {
  const known = new Map<string, KnownGuide>();
  return {
    known: (guide) => known.get(guide),
    async need(guides) {
      const missing = [...new Set(guides)].filter(
        (guide) => !known.has(guide) && Object.hasOwn(files, guide),
      );
      const failed = await Promise.all(
        missing.map(async (guide) => {
          const data = await fetchData(files[guide] ?? '');
          if (!data.ok) return [guide];
          known.set(guide, made(data.value as PreviewPart));
          return [];
        }),
      );
      return failed.flat();
    },
  };
}
