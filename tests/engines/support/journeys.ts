import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { formatFragment } from '../../../src/address/fragment.ts';
import { isOwn, split } from '../../../src/guide/ids.ts';
import { formatJourney } from '../../../src/address/journey-text.ts';
import type { Guide, Journey, NodeId } from '../../../src/guide/types.ts';
import { guides as published, languageOf, languages } from '../../../src/content/load.ts';
import { codeFor, made } from '../../browser/support/codes.ts';
import { shortestWays } from '../../browser/support/ways.ts';
import { Silent, answered, heard, until, type Engine, type Size, type Tab } from './engine.ts';

const PHONE: Size = { width: 360, height: 740 };
const DESK: Size = { width: 1280, height: 800 };

const site = (): string => {
  const url = process.env['SITE_URL'];
  if (url === undefined) throw new Error('no site is served');
  return url;
};

const guides = published();

/** Of a guide: the longest of the shortest ways to its ends, and one into another guide. */
function endsOf(guide: Guide): readonly (readonly [NodeId, Journey])[] {
  const ways = shortestWays(guide);
  const far = (ids: readonly NodeId[]): NodeId | undefined =>
    ids.toSorted((a, b) => (ways.get(b)?.length ?? 0) - (ways.get(a)?.length ?? 0))[0];
  const ends = [...ways.keys()].filter((id) => guide.nodes.get(id)?.answers.length === 0);
  const [own, others] = [true, false].map((is) => ends.filter((id) => isOwn({ id }) === is));
  const chosen = [far(own ?? []), far(others ?? [])];
  return chosen.flatMap((id) => (id === undefined ? [] : [[id, ways.get(id) ?? []] as const]));
}

/** Every journey on a phone, the guide's own end on a desk too. */
function screens(end: NodeId): (readonly [string, Size])[] {
  return [['phone', PHONE], ...(isOwn({ id: end }) ? [['desk', DESK] as const] : [])];
}

const pathOf = (guide: string, node: string): string => {
  const { guide: of = guide, name } = split(node);
  return `/${of}/${name}/`;
};

async function arrived(tab: Tab, path: string): Promise<URL> {
  return until(async () => {
    const url = new URL(await tab.url());
    // A page left while it loads would be told as a fault by the browser that cut it off.
    return url.pathname === path && (await tab.loaded()) ? url : undefined;
  }, path);
}

/** Follows a journey by clicking; each page has one heading and is no wider than its window. */
async function follow(tab: Tab, guide: string, journey: Journey, root = ''): Promise<void> {
  await tab.goto(site().replace(/\/$/, '') + root + pathOf(guide, journey[0]?.at ?? ''));
  for (const { at, answer } of journey) {
    await arrived(tab, root + pathOf(guide, at));
    expect(await tab.texts('h1')).toHaveLength(1);
    expect(await tab.sideways(), at).toBeLessThanOrEqual(0);
    await tab.click(`main a[data-answer="${answer}"]`);
  }
}

async function codeShown(tab: Tab): Promise<string> {
  return (await tab.texts('.code-card > .groups strong')).join('-');
}

/** The same journeys in an engine, by taps, at phone and desktop sizes. */
export function journeysIn(name: string, start: () => Promise<Engine>): void {
  describe(name, () => {
    let engine: Engine;
    beforeAll(async () => {
      engine = await start();
    });
    afterAll(() => engine.close());

    async function inTab(size: Size, act: (tab: Tab) => Promise<void>): Promise<void> {
      const tab = heard(await answered(engine.open(size), 'open'));
      try {
        await act(tab);
        expect(await tab.problems()).toEqual([]);
      } finally {
        await tab.close().catch((problem: unknown) => {
          if (!(problem instanceof Silent)) throw problem;
        });
      }
    }

    it('has journeys to follow', () => {
      expect(guides.flatMap(endsOf).length).toBeGreaterThan(guides.length);
    });

    for (const guide of guides)
      for (const [end, journey] of endsOf(guide))
        for (const [screen, size] of screens(end))
          it(`${screen}: ${guide.id} to ${end}, ${journey.length} answers`, () =>
            inTab(size, async (tab) => {
              await follow(tab, guide.id, journey);
              const url = await arrived(tab, pathOf(guide.id, end));
              const values = new URLSearchParams(url.hash.slice(1));
              expect(values.get('j')).toBe(formatJourney(journey));
              expect(await tab.sees('.lost')).toBe(false);
            }));

    it('turns a journey into the code the command line writes, and the preview reads it', () =>
      inTab(PHONE, async (tab) => {
        const guide = guides.find(({ id }) => (id as string) === 'door-locked');
        if (!guide) throw new Error('no door-locked');
        const [[, journey] = [undefined, []]] = endsOf(guide);
        const note = { journey, details: {}, made };
        const code = codeFor(note);
        const fragment = formatFragment(note);
        await tab.goto(new URL(`note/#${fragment}`, site()).href);
        await until(async () => ((await codeShown(tab)) === code ? true : undefined), 'the code');
        await tab.goto(new URL('preview/', site()).href);
        await tab.type('textarea', code.toLowerCase());
        await tab.click('form button');
        const answers = await tab.texts('.ranking h2');
        expect(answers.length).toBeGreaterThan(0);
      }));

    const others = languages().slice(1);
    it('has other languages', () => {
      expect(others.length).toBeGreaterThan(2);
    });

    for (const language of others)
      it(`${language}: a journey in it is kept, also when the language is changed at its end`, () =>
        inTab(PHONE, async (tab) => {
          const [guide] = guides;
          if (!guide) throw new Error('no guide');
          const [[end, journey] = [guide.start, []]] = endsOf(guide);
          await follow(tab, guide.id, journey, `/${language}`);
          const url = await arrived(tab, `/${language}${pathOf(guide.id, end)}`);
          expect(await tab.sees(`html[dir="${languageOf(language).direction}"]`)).toBe(true);
          const values = new URLSearchParams(url.hash.slice(1));
          expect(values.get('j')).toBe(formatJourney(journey));
          await tab.click('.languages a[hreflang="en"]');
          const own = await arrived(tab, pathOf(guide.id, end));
          expect(new URLSearchParams(own.hash.slice(1)).get('j')).toBe(formatJourney(journey));
        }));

    it('goes back and forth without losing the journey', () =>
      inTab(PHONE, async (tab) => {
        const [guide] = guides;
        if (!guide) throw new Error('no guide');
        const [[end, journey] = [guide.start, []]] = endsOf(guide);
        await follow(tab, guide.id, journey);
        await arrived(tab, pathOf(guide.id, end));
        for (const { at } of journey.toReversed()) {
          await tab.back();
          const url = await arrived(tab, pathOf(guide.id, at));
          const before = journey.slice(
            0,
            journey.findIndex((step) => step.at === at),
          );
          expect(new URLSearchParams(url.hash.slice(1)).get('j') ?? '').toBe(formatJourney(before));
        }
      }));
  });
}
