import { rm } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeOrigin, type Origin } from '../../browser/support/origin.ts';
import { makeRelease, newest } from '../../browser/support/releases.ts';
import { answered, heard, until, type Engine, type Tab } from './engine.ts';

/** What each release is, by its mark. */
const RELEASES = {
  first: {},
  second: { release: newest + 1, recall: { least: newest + 1, pages: [] } },
  middle: { release: newest + 1 },
  third: { release: newest + 2, recall: { least: newest + 2, pages: [] } },
  old: { renewAfter: -1, built: '2020-01-01' },
};
type Mark = keyof typeof RELEASES;

/** A release recalled, in an engine, by taps. Each test has an origin of its own, all have one tab. */
export function recallIn(name: string, start: () => Promise<Engine>): void {
  describe(`${name}, a release recalled`, () => {
    let engine: Engine;
    let tab: Tab;
    let origin: Origin;
    const dirs = new Map<Mark, string>();
    beforeAll(async () => {
      engine = await start();
      tab = heard(await answered(engine.open({ width: 360, height: 740 }), 'open'));
      for (const [mark, facts] of Object.entries(RELEASES))
        dirs.set(mark as Mark, await makeRelease(mark, facts));
    });
    afterAll(async () => {
      await engine.close();
      for (const dir of dirs.values()) await rm(dir, { recursive: true });
    });

    const release = (mark: Mark) => origin.release(dirs.get(mark) ?? '');
    const goto = (path: string, of = tab) => of.goto(origin.url + path);
    const seen = (selector: string, of = tab) =>
      // A page that is turned away while it is looked at answers with an error.
      until(
        () =>
          of.sees(selector).then(
            (is) => is || undefined,
            () => undefined,
          ),
        selector,
      );
    const shows = (mark: Mark, of = tab) => seen(`main[data-mark="${mark}"]`, of);
    const recalled = '[data-go-on]';
    const journey = async (of = tab) =>
      new URLSearchParams(new URL(await of.url()).hash.slice(1)).get('j');

    /** A test at an origin that serves a release, which is then kept whole. */
    const walk = (what: string, mark: Mark, act: () => Promise<void>) =>
      it(what, async () => {
        origin = await makeOrigin(dirs.get(mark) ?? '');
        try {
          await goto('about/');
          await seen('[data-state="kept"]');
          await act();
        } finally {
          // A worker that still leads this tab away would do so in the midst of the next test.
          await until(async () => {
            await tab.goto('about:blank');
            return (await tab.url()) === 'about:blank' ? true : undefined;
          }, 'the site left');
          await origin.close();
        }
      });

    /** A page of the guide and two answers, all of them the first release's. */
    async function begin(): Promise<void> {
      await goto('door-locked/danger/');
      await shows('first');
      await goto('door-locked/since/#g=door-locked&j=danger.none');
      await tab.click('main a[data-answer="unsure"]');
      await seen('main a[data-answer="heat"]');
    }
    /** Turned away, or the newer worker was quicker: then its own page stands there at once. */
    const turned = (mark: Mark, of = tab) => seen(`${recalled}, main[data-mark="${mark}"]`, of);
    /** From where a page was turned away to the release that takes its place, nothing lost. */
    async function goOn(mark: Mark, of = tab): Promise<void> {
      await turned(mark, of);
      const before = await journey(of);
      if (await of.sees(recalled)) await of.click(recalled);
      await shows(mark, of);
      expect(await journey(of)).toBe(before);
    }

    walk(
      'mid-guide: replaced, the answers kept, and the new one works offline',
      'first',
      async () => {
        await begin();
        await release('second');
        await goto('door-locked/wait/#g=door-locked&j=danger.none~since.unsure~near.heat');
        await goOn('second');
        expect(await journey()).toBe('danger.none~since.unsure~near.heat');
        await until(async () => {
          await goto('about/');
          await seen('[data-age=""]');
          const [told] = await tab.texts('[data-age=""]');
          return told?.includes(`release ${String(newest + 1)},`) === true ? true : undefined;
        }, 'the new release is kept');
        origin.fate = () => 'cut';
        await goto('door-locked/danger/');
        await shows('second');
      },
    );

    walk(
      'two tabs: the one in the middle of the guide is turned away as well',
      'first',
      async () => {
        await begin();
        await release('second');
        const other = await tab.beside();
        await goto('door-locked/danger/', other);
        await turned('second', other);
        await seen(recalled);
        expect(await journey()).toBe('danger.none~since.unsure');
        await goOn('second');
        await goOn('second', other);
      },
    );

    walk('offline, then online: what was heard holds, then it goes on', 'first', async () => {
      await begin();
      await release('second');
      // All but the recall is cut: the newer release cannot be had.
      origin.fate = (path) => (path === '/recall.json' ? 'answer' : 'cut');
      await goto('door-locked/danger/');
      await seen(recalled);
      origin.fate = () => 'cut';
      await goto('door-locked/since/#g=door-locked&j=danger.none');
      await seen(recalled);
      expect(await tab.sees('main a[href^="tel:"]')).toBe(true);
      origin.fate = () => 'answer';
      await goOn('second');
      expect(await journey()).toBe('danger.none');
    });

    walk('two releases back', 'first', async () => {
      await begin();
      await release('middle');
      // Each visit has the browser look for a newer worker.
      await until(async () => {
        await goto('about/');
        await seen('[data-state="kept"]');
        return (await tab.sees('.update')) ? true : undefined;
      }, 'the newer release waits');
      await goto('door-locked/since/#g=door-locked&j=danger.none');
      await shows('first');
      await release('third');
      await goto('door-locked/danger/');
      await goOn('third');
    });

    walk('the server gone: the copy serves on, and past its age asks first', 'old', async () => {
      // Online nothing is asked, however old.
      await goto('door-locked/danger/');
      await seen('main a[data-answer="none"]');
      origin.fate = () => 'cut';
      await goto('');
      await seen('[data-age="alone"]');
      await tab.click('a.start');
      await seen('[data-go-on="?old"]');
      // Never away from danger and numbers.
      await seen('.danger-list summary');
      await goto('door-locked/stop-fire/');
      await seen('.page.stop');
      await tab.back();
      // Until its script has run it leads to the first page.
      await seen('[data-go-on="?old"][href*="/danger/"]');
      await tab.click('[data-go-on="?old"]');
      await seen('main a[data-answer="none"]');
    });
  });
}
