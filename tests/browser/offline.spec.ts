// With no network. What is kept is the whole site in one test; the others keep one guide, by the same
// worker.
import { toWait } from './support/codes.ts';
import { expect, siteDir } from './support/fixtures.ts';
import { STAFF_PAGES } from '../../src/offline/worker/bundle.ts';
import { shownCode } from './support/note.ts';
import { DOWN, NONE, cached, kept, list, state, test } from './support/offline.ts';
import { answerLink, giveAnswer, isForeign, pagesOf, walkGuide } from './support/site.ts';

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
    // The page asks for its guide's bundles ahead of the worker, which takes them from there.
    expect(own.filter((path) => path.includes('/kept/'))).toHaveLength(2);
    const bundles = origin.asked.filter((path) => path.includes('/kept/'));
    expect(bundles).toHaveLength(new Set(bundles).size);
    const first = origin.asked.slice(0, start);
    // Chromium asks for icon and manifest out of the page's sight.
    const beside = ['/icon.svg', '/manifest.webmanifest', '/icon-any-192.png'];
    expect(first.filter((path) => ![...own, ...beside].includes(path))).toEqual([]);
    const files = await list(siteDir());
    const pages = pagesOf(siteDir()).filter(
      (path) => !/^\/(?:404\.html$|map\/|learn\/|safety\/)/.test(path) && !isForeign(path),
    );
    expect(files.filter(isForeign)).toEqual([]);
    expect(pages.length).toBeGreaterThan(80);
    for (const path of pages) expect(files).toContain(path.slice(1));
    // Staff's pages are kept once one of them has been opened.
    const forAll = await cached(page);
    for (const path of pages.map((path) => path.slice(1)))
      expect(forAll.includes(path), path).toBe(!STAFF_PAGES.test(path));
    expect(origin.asked.filter((path) => path.includes('/kept/staff'))).toEqual([]);
    await page.goto('/staff/');
    await kept(page, true);
    // Beside them what the worker remembers.
    expect(new Set(await cached(page))).toEqual(new Set([...files, 'sw.js']));
  });
});

test.describe('the network gone', () => {
  test.use({ expects: DOWN });
  test('guide, note and preview work after the first visit', async ({
    place: { origin, page },
    small,
  }) => {
    await page.goto('/preview/');
    await kept(page, true);
    origin.fate = () => 'cut';
    origin.asked.length = 0;
    await page.goto('/');
    await page.locator('a.start').click();
    await walkGuide(page, [...toWait, ['wait', 'unsure']]);
    await page.reload();
    await page.goto(`/note/${new URL(page.url()).hash}`);
    const code = await shownCode(page);
    expect(code).toMatch(/^(?:[0-9A-Z]{4}-){3,}[0-9A-Z]{4}$/);
    const answer = await page.goto(`/preview/#c=${code}`);
    await expect(page.locator('#preview h2').first()).toBeVisible();
    // A kept page is as guarded as one of the host.
    const headers = answer?.headers() ?? {};
    expect(headers['content-type']).toBe('text/html;charset=utf-8');
    expect(headers['content-security-policy']).toContain("frame-ancestors 'none'");
    expect(headers['permissions-policy']).toContain('camera=(self)');
    // What loads on demand is there as well: the reader of QR codes.
    const scripts = (await list(small)).filter((file) => file.includes('zxing'));
    expect(scripts).toHaveLength(1);
    const status = await page.evaluate(async (url) => (await fetch(url)).status, `/${scripts[0]}`);
    expect(status).toBe(200);
    const asks = ['/sw.js', '/recall.json'];
    expect(origin.asked.filter((path) => !asks.includes(path))).toEqual([]);
  });

  test('a browser that is never idle keeps it all the same', async ({ place: { page } }) => {
    await page.addInitScript(() => {
      window.requestIdleCallback = () => 0;
    });
    await page.goto('/');
    await kept(page);
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

  // Each request of each bundle cut: tests/unit/offline.
  test('a download cut after the own guide serves it, and goes on later', async ({
    place: { origin, page },
  }) => {
    // The small site's own guide is its only one: the rest comes last.
    origin.fate = (path) => (path.startsWith('/_astro/kept/rest.') ? 'cut' : 'answer');
    await page.goto('/door-locked/danger/');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await expect.poll(() => origin.asked.some((path) => path.includes('/kept/rest.'))).toBe(true);
    origin.fate = () => 'cut';
    await giveAnswer(answerLink(page, 'none'));
    await expect(answerLink(page, 'unsure')).toBeVisible();
    await page.goto(`/note/${new URL(page.url()).hash}`);
    await shownCode(page);
    // What is not kept leads to the first page.
    await page.goto('/about/');
    await expect(page.locator('a.start')).toBeVisible();
    origin.fate = () => 'answer';
    origin.fetched.length = 0;
    await page.goto('/door-locked/danger/');
    await kept(page);
    const again = origin.fetched.filter((path) => path.includes('/kept/'));
    expect(again).toEqual([expect.stringContaining('/kept/rest.')]);
    origin.fate = () => 'cut';
    await page.goto('/about/');
    await expect(page.locator('.offline')).toBeVisible();
  });

  for (const [wrong, told] of [
    ['shared', NONE],
    ['rest', { ...NONE, active: true }],
  ] as const)
    test(`a wrong byte in the bundle ${wrong}: nothing of it is used, and it is told`, async ({
      place: { origin, page },
    }) => {
      origin.fate = (path) => (path.includes(`/kept/${wrong}.`) ? 'spoil' : 'answer');
      await page.goto('/about/');
      await expect(page.locator('[data-state="altered"]')).toBeVisible();
      await expect(page.locator('.keep')).toBeVisible();
      expect(await state(page)).toEqual(told);
      expect((await cached(page)).includes('about/')).toBe(false);
      origin.fate = () => 'answer';
      await page.locator('.keep').click();
      await expect(page.locator('[data-state="kept"]')).toBeVisible();
      expect((await cached(page)).includes('about/')).toBe(true);
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
    expect(origin.asked.filter((path) => /sw\.js|\/kept\//.test(path))).toEqual([]);
    await page.locator('.keep').click();
    await expect(page.locator('[data-state="kept"]')).toBeVisible();
    await page.reload();
    await expect(page.locator('[data-state="kept"]')).toBeVisible();
    await expect(page.locator('.keep')).toBeHidden();
  });
});
