import { CEILINGS } from './weight.ts';
import { guidesIn, guidePagesOf, pagesOf } from './site.ts';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';

/** Pages that share one weight ceiling. */
export interface Kind {
  readonly kind: 'question' | 'note' | 'preview' | 'round' | 'desk';
  /** Addresses from the site's root. */
  readonly paths: readonly string[];
  /** The page a guide starts with, for kinds that have one. */
  readonly start?: string;
  /** Bytes, brotli, all loads of a first visit. */
  readonly ceiling: number;
}

/** A short unfinished journey, so that the note page has something to show. */
const JOURNEY = '#j=danger.none';

/** What decides which files a guide's page loads: its kind, a timer, a field for the display's text, its own style. */
function make(html: string): string {
  const [, kind = ''] = /class="page (question|step|stop|finish)/.exec(html) ?? [];
  if (kind === '') throw new Error('a page of a guide says what kind it is');
  return [
    kind,
    ...['data-timer', 'data-error-field', '<style>'].filter((sign) => html.includes(sign)),
  ].join();
}

/**
 * Of each make the heaviest page of all guides, by its compressed size: pages of one make load the
 * same files, so no other page of theirs weighs more.
 */
export function heaviestPages(dist: string): string[] {
  const heaviest = new Map<string, readonly [path: string, bytes: number]>();
  for (const path of guidesIn(dist).flatMap((guide) => guidePagesOf(dist, guide))) {
    const file = join(dist, path, 'index.html');
    const own = make(readFileSync(file, 'utf8'));
    const bytes = statSync(`${file}.br`).size;
    if (bytes > (heaviest.get(own)?.[1] ?? 0)) heaviest.set(own, [path, bytes]);
  }
  return [...heaviest.values()].map(([path]) => path);
}

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
      paths: heaviestPages(dist),
      start: known('/door-locked/danger/'),
      ceiling: CEILINGS.question,
    },
    { kind: 'note', paths: [known('/note/') + JOURNEY], ceiling: CEILINGS.note },
    { kind: 'preview', paths: [known('/preview/')], ceiling: CEILINGS.preview },
    { kind: 'round', paths: [known('/round/')], ceiling: CEILINGS.round },
    { kind: 'desk', paths: [known('/desk/')], ceiling: CEILINGS.desk },
  ];
}
