// Which pages a sweep visits.
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { languages, mainLanguage } from '../../../src/content/load.ts';
import { formatJourney } from '../../../src/address/journey-text.ts';
import { ownNodes } from '../../../src/guide/ids.ts';
import type { Guide, GuideNode, Journey } from '../../../src/guide/types.ts';
import { readablePagesOf } from './site.ts';
import { doorLocked, guides, shortestJourneys } from './shortest-journeys.ts';

/** Whether all pages are asked for. */
export const every = process.env['EVERY'] === '1';

/** The top of a language's pages. */
export const rootOf = (language: string): string =>
  language === mainLanguage() ? '/' : `/${language}/`;

/** A page of a guide and a shortest journey to it. */
export interface OfGuide {
  readonly guide: Guide;
  readonly node: GuideNode;
  readonly journey: Journey;
}

/** One page to look at. */
export interface Visit {
  readonly language: string;
  /** From the site's root. */
  readonly path: string;
  readonly hash: string;
  /** Undefined for pages that are no guide's. */
  readonly of: OfGuide | undefined;
  /** The first page made of its parts: looked at for what depends on parts, not on texts. */
  readonly first: boolean;
  /** The first of its kind in its language: looked at for what depends on the language as well. */
  readonly speaks: boolean;
}

/** What decides which parts a page is made of. */
function partsOf(path: string, of: OfGuide | undefined): string {
  if (!of) return path.replace(/\/(care|map)\/.+/, '/$1/x/');
  const { kind, caution, timer, takesError } = of.node;
  return [kind, caution, timer?.kind, takesError].join();
}

/** What a page says, without how far it is: copies on other tracks and shared pages say the same. */
export function textOf(dist: string, path: string): string {
  const [article = ''] =
    /<article.*<\/article>/s.exec(readFileSync(join(dist, path, 'index.html'), 'utf8')) ?? [];
  return article
    .replace(/<p class="where">.*?<\/p>/s, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');
}

/**
 * The pages of a sweep. Of guides, a page of every distinct text, in one of the languages by turns,
 * so that each language has its share of every guide; of the locked door each in the first language
 * as well. Pages that say the same differ in their links alone: those are held by tests/built. Pages
 * of no guide in the first language; in the others one of each kind, and of the rest every so many.
 * With `EVERY=1`, or `whole`, every page there is.
 */
export function visits(dist: string, whole = every): Visit[] {
  const [main = '', ...others] = languages();
  let turn = 0;
  const texts = new Set<string>();
  const ofGuides = guides.flatMap((guide) => {
    const shortest = shortestJourneys(guide);
    return ownNodes(guide).flatMap((node) => {
      const text = textOf(dist, `/${guide.id}/${node.id}/`);
      const again = texts.has(text);
      texts.add(text);
      if (again && !whole) return [];
      const journey = shortest.get(node.id);
      if (!journey) throw new Error(`no way to ${guide.id}/${node.id}`);
      const turned = languages()[turn++ % languages().length] ?? main;
      const always = guide.id === doorLocked().id ? [main] : [];
      return [...new Set(whole ? languages() : [...always, turned])].map((language) => ({
        language,
        path: `${rootOf(language)}${guide.id}/${node.id}/`,
        hash: journey.length === 0 ? '' : `#j=${formatJourney(journey)}`,
        of: { guide, node, journey },
      }));
    });
  });
  const guidePage = new RegExp(`/(?:${guides.map(({ id }) => id).join('|')})/`);
  const besides = readablePagesOf(dist)
    .filter((path) => !guidePage.test(path))
    .map((path) => ({
      language: others.find((other) => path.startsWith(rootOf(other))) ?? main,
      path,
      hash: '',
      of: undefined,
    }));
  const seen = new Set<string>();
  const isNew = (make: string) => every || (!seen.has(make) && Boolean(seen.add(make)));
  return [...ofGuides, ...besides].flatMap((visit, nth) => {
    const { language, path, of } = visit;
    const own = path.slice(rootOf(language).length - 1);
    const first = isNew(partsOf(own, of));
    const speaks = isNew(`${language} ${of?.node.kind ?? partsOf(own, of)}`);
    const turned = whole || of !== undefined || language === main || nth % others.length === 0;
    return first || speaks || turned ? [{ ...visit, first, speaks }] : [];
  });
}
