// With no network. What is kept is the whole site in one test; the others keep one guide, by the same
// worker.
import { toWait } from './support/codes.ts';
import { expect, siteDir } from './support/fixtures.ts';
import { shownCode } from './support/note.ts';
import { DOWN, NONE, kept, list, state, test } from './support/offline.ts';
import { isForeign, pagesOf, walkGuide } from './support/site.ts';

test.describe('all of the site', () => {
  test.use({ whole: true });
  test('the first visit loads the page alone, then the rest, and all of the site', async ({
    place: { origin, page },
  }) => {
    await page.goto('/door-locked/danger/');
    await kept(page);
    const start = origin.asked.indexOf('/sw.js');
    const own = await page.evaluate(() =>
      [location.href, ...performance.getEntriesByType('resource').map(({ name }) => name)].map(
        (name) => new URL(name).pathname,
      ),
    );
    expect(start).toBeGreaterThan(3);
    const first = origin.asked.slice(0, start);
    // Chromium asks for icon and manifest out of the page's sight.
    const beside = ['/icon.svg', '/manifest.webmanifest', '/icon-any-192.png'];
    expect(first.filter((path) => ![...own, ...beside].includes(path))).toEqual([]);
    const { files } = await list(siteDir());
    const pages = pagesOf(siteDir()).filter((path) => path !== '/404.html' && !isForeign(path));
    expect(Object.keys(files).filter(isForeign)).toEqual([]);
    expect(pages.length).toBeGreaterThan(80);
    for (const path of pages) expect(files, path).toHaveProperty([path.slice(1)]);
    const urls = await page.evaluate(async () => {
      const names = await caches.keys();
      const all = await Promise.all(names.map(async (name) => (await caches.open(name)).keys()));
      return all.flat().map(({ url }) => new URL(url).pathname.slice(1));
    });
    expect(urls.toSorted()).toEqual(Object.keys(files).toSorted());
  });
});

test.describe('the network gone', () => {
  test.use({ expects: DOWN });
  test('guide, note and preview work after the first visit', async ({
    place: { origin, page },
    small,
  }) => {
    await page.goto('/');
    await kept(page);
    origin.fate = () => 'cut';
    origin.asked.length = 0;
    await page.locator('a.start').click();
    await walkGuide(page, [...toWait, ['wait', 'unsure']]);
    await page.reload();
    await page.goto(`/note/${new URL(page.url()).hash}`);
    const code = await shownCode(page);
    expect(code).toMatch(/^(?:[0-9A-Z]{4}-){3,}[0-9A-Z]{4}$/);
    await page.goto(`/preview/#c=${code}`);
    await expect(page.locator('#preview h2').first()).toBeVisible();
    // What loads on demand is there as well: the reader of QR codes.
    const scripts = Object.keys((await list(small)).files).filter((file) => file.includes('zxing'));
    expect(scripts).toHaveLength(1);
    const status = await page.evaluate(async (url) => (await fetch(url)).status, `/${scripts[0]}`);
    expect(status).toBe(200);
    const asks = ['/sw.js', '/recall.json'];
    expect(origin.asked.filter((path) => !asks.includes(path))).toEqual([]);
  });

  test('addresses cut, with a query, or unknown lead somewhere', async ({
    place: { origin, page },
  }) => {
    await page.goto('/');
    await kept(page);
    origin.fate = () => 'cut';
    await page.goto('/door-locked/danger?from=mail#j=');
    await expect(page).toHaveURL(/\/door-locked\/danger\/(?:#j=)?$/);
    await page.goto('/door-locked/danger/?from=mail');
    await expect(page.locator('main a[data-answer="none"]')).toBeVisible();
    await page.goto('/no/such/page/');
    await expect(page).toHaveURL(origin.url);
    await expect(page.locator('a.start')).toBeVisible();
  });

  // Of those asked for at once, some may not be written yet when the first fails.
  for (const [after, least] of [
    [0, 0],
    [1, 0],
    [60, 10],
  ] as const)
    test(`a download cut after ${String(after)} files is never served, and goes on later`, async ({
      place: { origin, page },
    }) => {
      let files = 0;
      let begun = false;
      origin.fate = (path) => {
        if (path === '/precache.json') begun = true;
        else if (begun) files += 1;
        return begun && files >= after ? 'cut' : 'answer';
      };
      await page.goto('/');
      await expect.poll(() => begun).toBe(true);
      await expect.poll(() => state(page)).toEqual(NONE);
      expect(await page.evaluate(() => navigator.serviceWorker.controller)).toBeNull();
      const had = await page.evaluate(async () => {
        const [name] = await caches.keys();
        return name === undefined ? [] : (await (await caches.open(name)).keys()).map((r) => r.url);
      });
      // All that came before the cut, and nothing after it, is there to go on from.
      expect(had.length).toBeLessThanOrEqual(after);
      expect(had.length).toBeGreaterThanOrEqual(Math.min(after, 1) * least);
      origin.fate = () => 'answer';
      origin.fetched.length = 0;
      await page.goto('/about/');
      await kept(page);
      const again = new Set(origin.fetched);
      expect(again).toContain('/precache.json');
      expect(again.size).toBeGreaterThan(1);
      const twice = had.map((url) => new URL(url).pathname).filter((path) => again.has(path));
      expect(twice, 'what was verified is not fetched again').toEqual([]);
      origin.fate = () => 'cut';
      await page.goto('/preview/');
      await expect(page.locator('h1')).toBeVisible();
    });

  test('one wrong file, and nothing is kept in use', async ({ place: { origin, page } }) => {
    let begun = false;
    origin.fate = (path) => {
      begun ||= path === '/precache.json';
      return begun && path === '/door-locked/stop-gas/' ? 'spoil' : 'answer';
    };
    await page.goto('/');
    await expect.poll(() => origin.asked.includes('/door-locked/stop-gas/')).toBe(true);
    await expect.poll(() => state(page)).toEqual(NONE);
    await page.goto('/about/');
    await expect(page.locator('[data-state="altered"]')).toBeVisible();
    await expect(page.locator('.keep')).toBeVisible();
    expect(await page.evaluate(() => navigator.serviceWorker.controller)).toBeNull();
  });

  test('a full device is survived, and told', async ({ place: { origin, context, page } }) => {
    const cdp = await context.newCDPSession(page);
    await cdp.send('Storage.overrideQuotaForOrigin', {
      origin: new URL(origin.url).origin,
      quotaSize: 50_000,
    });
    await page.goto('/about/');
    await expect(page.locator('[data-state="full"]')).toBeVisible();
    await expect(page.locator('.keep')).toBeVisible();
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
    await walkGuide(page, [['danger', 'none']]);
  });

  test('a download that had failed before the page could look is told', async ({
    place: { page },
  }) => {
    await page.addInitScript(() => {
      navigator.serviceWorker.getRegistration = () => Promise.resolve(new EventTarget() as never);
    });
    await page.goto('/about/');
    await expect(page.locator('[data-state="failed"]')).toBeVisible();
    await expect(page.locator('.keep')).toBeVisible();
  });
});

test.describe('a reader who saves data', () => {
  test.use({ saves: true });
  test('downloads nothing ahead, and may ask for it', async ({ place: { origin, page } }) => {
    await page.goto('/');
    await page.goto('/about/');
    await expect(page.locator('[data-state="not"]')).toBeVisible();
    expect(origin.asked).not.toContain('/sw.js');
    await page.locator('.keep').click();
    await expect(page.locator('[data-state="kept"]')).toBeVisible();
    await page.reload();
    await expect(page.locator('[data-state="kept"]')).toBeVisible();
    await expect(page.locator('.keep')).toBeHidden();
  });
});
