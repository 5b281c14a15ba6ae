import { CEILINGS } from './weight.ts';
import { guidePagesOf, pagesOf } from './site.ts';

/** Pages that share one weight ceiling. */
export interface Kind {
  readonly kind: 'question' | 'note' | 'preview';
  /** Addresses from the site's root. */
  readonly paths: readonly string[];
  /** The page a guide starts with, for kinds that have one. */
  readonly start?: string;
  /** Bytes, brotli, all loads of a first visit. */
  readonly ceiling: number;
}

/** A short unfinished journey, so that the note page has something to show. */
const JOURNEY = '#j=danger.none';

/** The kinds of pages with a ceiling. Every page of a guide counts as a question page. */
export function kindsOf(dist: string): Kind[] {
  const pages = pagesOf(dist);
  const known = (path: string) => {
    if (!pages.includes(path)) throw new Error(`${path} is not among the built pages`);
    return path;
  };
  return [
    {
      kind: 'question',
      paths: guidePagesOf(dist),
      start: known('/door-locked/danger/'),
      ceiling: CEILINGS.question,
    },
    { kind: 'note', paths: [known('/note/') + JOURNEY], ceiling: CEILINGS.note },
    { kind: 'preview', paths: [known('/preview/')], ceiling: CEILINGS.preview },
  ];
}
