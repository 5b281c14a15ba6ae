import { rm } from 'node:fs/promises';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { makeOrigin, type Origin } from '../../browser/support/origin.ts';
import { makeRelease, newest } from '../../browser/support/releases.ts';
import { answered, heard, until, type Engine } from './engine.ts';

/** A recall in an engine, by taps: in mid-guide, the newer release, then the server gone. */
export function recallIn(name: string, start: () => Promise<Engine>): void {
  describe(`${name}, a release recalled`, () => {
    let engine: Engine;
    let origin: Origin;
    const dirs: string[] = [];
    beforeAll(async () => {
      engine = await start();
      const recall = { least: newest + 1, pages: [] };
      dirs.push(await makeRelease('first'));
      dirs.push(await makeRelease('second', { release: newest + 1, recall }));
      origin = await makeOrigin(dirs[0] ?? '');
    });
    afterAll(async () => {
      await engine.close();
      await origin.close();
      for (const dir of dirs) await rm(dir, { recursive: true });
    });

    it('is replaced in mid-guide, the answers are kept, and the new one works offline', async () => {
      const tab = heard(await answered(engine.open({ width: 360, height: 740 }), 'open'));
      const site = origin.url.replace(/\/$/, '');
      const seen = (selector: string) =>
        // A page that is turned away while it is looked at answers with an error.
        until(
          () =>
            tab.sees(selector).then(
              (is) => is || undefined,
              () => undefined,
            ),
          selector,
        );
      const about = (release: number) =>
        until(
          async () => {
            await tab.goto(`${site}/about/`);
            // WebKit has no idle callback: what is kept is begun two seconds after the page has come.
            await new Promise((done) => setTimeout(done, 3000));
            const told = (await tab.sees('[data-age=""]')) ? await tab.texts('[data-age=""]') : [];
            return told.join().includes(`release ${String(release)},`) ? true : undefined;
          },
          `release ${String(release)} is kept`,
        );

      await about(newest);
      origin.asked.length = 0;
      await tab.goto(`${site}/door-locked/danger/`);
      await seen('main[data-mark="first"]');
      // Two taps at once count as one.
      await tab.click('main a[data-answer="none"]');
      await seen('main a[data-answer="none"][data-armed]');
      await new Promise((done) => setTimeout(done, 1000));
      await tab.click('main a[data-answer="none"]');
      await seen('main a[data-answer="overnight"]');
      await tab.click('main a[data-answer="unsure"]');
      await seen('main [data-answer="heat"]');
      const asks = () => origin.asked.filter((path) => path === '/recall.json').length;
      await until(() => Promise.resolve(asks() >= 3 || undefined), 'each page has asked');
      await origin.release(dirs[1] ?? '');
      await tab.click('main a[data-answer="heat"]');
      await seen('[data-go-on]');
      await tab.click('[data-go-on]');
      await seen('main[data-mark="second"]');
      // The page looked at may be turned away before its answer is: then it is asked again.
      if (new URL(await tab.url()).pathname === '/door-locked/near/') {
        await tab.click('main a[data-answer="heat"]');
        await seen('main a[data-answer="overnight"]');
      }
      const url = new URL(await tab.url());
      expect(url.pathname).toBe('/door-locked/wait/');
      expect(url.hash).toContain('j=danger.none~since.unsure~near.heat');

      await about(newest + 1);
      origin.fate = () => 'cut';
      await tab.goto(`${site}/door-locked/danger/`);
      await seen('main[data-mark="second"]');
      await tab.close();
    });
  });
}
