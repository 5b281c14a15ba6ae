import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatFragment } from '../../../src/address/fragment.ts';
import { isOwn, parseId } from '../../../src/guide/ids.ts';
import { formatJourney } from '../../../src/address/journey-text.ts';
import type { Guide, Journey, NodeId } from '../../../src/guide/types.ts';
import { languageOf, languages, localeOf, mainLanguage } from '../../../src/content/load.ts';
import { codeFor, made } from '../../browser/support/codes.ts';
import { guides, shortestJourneys } from '../../browser/support/shortest-journeys.ts';
import { answered, heard, until, type Engine, type Size, type Tab } from './engine.ts';

const PHONE: Size = { width: 360, height: 740 };
const DESK: Size = { width: 1280, height: 800 };

const site = (): string => {
  const url = process.env['SITE_URL'];
  if (url === undefined) throw new Error('no site is served');
  return url.replace(/\/$/, '');
};
const rootOf = (language: string) => (language === mainLanguage() ? '/' : `/${language}/`);

/** Of a guide: the farthest end that another guide holds, where there is one; else of its own. */
function farEnd(guide: Guide): readonly [NodeId, Journey] {
  const shortest = shortestJourneys(guide);
  const length = (id: NodeId) => shortest.get(id)?.length ?? 0;
  const ends = [...shortest.keys()]
    .filter((id) => guide.nodes.get(id)?.answers.length === 0)
    .toSorted(
      (a, b) => Number(isOwn({ id: a })) - Number(isOwn({ id: b })) || length(b) - length(a),
    );
  const [end = guide.start] = ends;
  return [end, shortest.get(end) ?? []];
}

const pathOf = (root: string, guide: string, node: string): string => {
  const { guide: of = guide, name } = parseId(node);
  return `${root}${of}/${name}/`;
};

async function arrived(tab: Tab, path: string): Promise<URL> {
  return until(async () => {
    const url = new URL(await tab.url());
    // A page left while it loads would be told as a fault by the browser that cut it off.
    return url.pathname === path && (await tab.loaded()) ? url : undefined;
  }, path);
}
const journeyOf = (url: URL) => new URLSearchParams(url.hash.slice(1)).get('j') ?? '';

/** Follows a journey to its end by clicking; each page has one heading and fits its window. */
async function follow(tab: Tab, guide: Guide, root: string): Promise<URL> {
  const [end, journey] = farEnd(guide);
  expect(journey.length, guide.id).toBeGreaterThan(3);
  await tab.goto(site() + pathOf(root, guide.id, journey[0]?.at ?? ''));
  for (const { at, answer } of journey) {
    await arrived(tab, pathOf(root, guide.id, at));
    expect(await tab.texts('h1')).toHaveLength(1);
    expect(await tab.sideways(), at).toBeLessThanOrEqual(0);
    const edge = guide.nodes.get(at)?.answers.find(({ id }) => id === answer);
    // Some answers ask for a second tap.
    for (let tap = 0; tap < (edge?.confirm ? 2 : 1); tap += 1)
      await tab.click(`main a[data-answer="${answer}"]`);
  }
  const url = await arrived(tab, pathOf(root, guide.id, end));
  expect(journeyOf(url)).toBe(formatJourney(journey));
  expect(await tab.sees('.lost')).toBe(false);
  return url;
}

async function codeShown(tab: Tab): Promise<string> {
  return (await tab.texts('.code-card > .groups strong')).join('-');
}

/**
 * The same journeys in an engine, by taps: each guide once, the languages by turns, on a phone; and
 * the first guide on a desk. One tab of each size does all: no test asks for a first visit.
 */
export function journeysIn(name: string, start: () => Promise<Engine>): void {
  describe(name, () => {
    let engine: Engine;
    /** One at a time: WebKit's driver has one session. */
    let open: { readonly size: Size; readonly tab: Tab } | undefined;
    beforeAll(async () => {
      engine = await start();
    });
    afterAll(() => engine.close());

    const shut = async () => {
      const was = open;
      open = undefined;
      await was?.tab.close().catch(() => undefined);
    };
    /** In a tab kept from test to test; after a failure the next test, or the second try, opens another. */
    async function inTab(size: Size, act: (tab: Tab) => Promise<void>): Promise<void> {
      if (open?.size !== size) {
        await shut();
        open = { size, tab: heard(await answered(engine.open(size), 'open')) };
      }
      const { tab } = open;
      try {
        await act(tab);
        expect(await tab.problems()).toEqual([]);
      } catch (problem) {
        await shut();
        throw problem;
      }
    }

    const spoken = new Set<string>();
    for (const [nth, guide] of guides.entries()) {
      const language = languages()[nth % languages().length] ?? mainLanguage();
      spoken.add(language);
      const next = languages()[(nth + 1) % languages().length] ?? mainLanguage();
      it(`${guide.id}, ${language}: a journey is kept, also in ${next} at its end`, () =>
        inTab(PHONE, async (tab) => {
          const url = await follow(tab, guide, rootOf(language));
          expect(await tab.sees(`html[dir="${languageOf(language).direction}"]`)).toBe(true);
          // A copy of one language has no links to others.
          expect(await tab.sees('.languages a')).toBe(languages().length > 1);
          if (next === language) return;
          await tab.click(`.languages a[hreflang="${localeOf(next)}"]`);
          const below = url.pathname.slice(rootOf(language).length);
          const own = await arrived(tab, rootOf(next) + below);
          expect(journeyOf(own)).toBe(journeyOf(url));
        }));
    }
    it('these are all languages, and more than one guide', () => {
      expect(spoken).toEqual(new Set(languages()));
      expect(guides.length).toBeGreaterThan(1);
    });

    it('turns a journey into the code the command line writes, and the preview reads it', () =>
      inTab(PHONE, async (tab) => {
        const guide = guides.find(({ id }) => (id as string) === 'door-locked');
        if (!guide) throw new Error('no door-locked');
        const [, journey] = farEnd(guide);
        const note = { journey, details: {}, made };
        const code = codeFor(note);
        await tab.goto(`${site()}/note/#${formatFragment(note)}`);
        await until(async () => ((await codeShown(tab)) === code ? true : undefined), 'the code');
        await tab.goto(`${site()}/preview/`);
        await tab.type('textarea', code.toLowerCase());
        await tab.click('form button');
        const answers = await tab.texts('.ranking h2');
        expect(answers.length).toBeGreaterThan(0);
      }));

    it('on a desk: a journey, and back through it without losing it', () =>
      inTab(DESK, async (tab) => {
        const [guide] = guides;
        if (!guide) throw new Error('no guide');
        const [, journey] = farEnd(guide);
        await follow(tab, guide, '/');
        for (const [place, { at }] of [...journey.entries()].toReversed()) {
          await tab.back();
          const url = await arrived(tab, pathOf('/', guide.id, at));
          expect(journeyOf(url)).toBe(formatJourney(journey.slice(0, place)));
        }
      }));
  });
}
