// With no network. Every test has an origin of its own: the server is really gone, not emulated so.
import { cp, mkdtemp, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, relative } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { keepOffline } from '../../src/site/build/keep-offline.ts';
import { expect as watched, siteDir, test as base } from './support/fixtures.ts';
import { makeOrigin, type Origin } from './support/origin.ts';
import { isForeign, pagesOf, walkGuide } from './support/site.ts';
import { toWait } from './support/codes.ts';
import { watch } from './support/watch.ts';
import { shownCode } from './support/note.ts';

/** Keeping a site takes seconds where other work runs beside. */
const expect = watched.configure({ timeout: 30_000 });

interface Place {
  readonly origin: Origin;
  readonly context: BrowserContext;
  readonly page: Page;
}

/** A phone at an origin of its own, nothing kept yet. */
const test = base.extend<{ place: Place; saves: boolean; expects: RegExp[] }>({
  saves: [false, { option: true }],
  /** What the browser says of its own accord when a download fails or the network is off. */
  expects: [[], { option: true }],
  place: async ({ browser, saves, expects }, use) => {
    const origin = await makeOrigin(siteDir());
    const context = await browser.newContext({ baseURL: origin.url, serviceWorkers: 'allow' });
    const found = await watch(context, origin.url);
    if (saves)
      await context.addInitScript(() => {
        Object.defineProperty(navigator, 'connection', { value: { saveData: true } });
      });
    await use({ origin, context, page: await context.newPage() });
    await context.close();
    await origin.close();
    const problems = found.verdict().filter((text) => !expects.some((one) => one.test(text)));
    expect(problems, 'nothing goes wrong in the browser').toEqual([]);
  },
});

test.skip(({ isMobile }) => !isMobile, 'what is kept is the same on every screen');

/** Resolves once a release is kept and in use. */
const kept = (page: Page) => page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
const state = (page: Page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return {
      installing: Boolean(registration?.installing),
      waiting: Boolean(registration?.waiting),
      active: Boolean(registration?.active),
    };
  });
const NONE = { installing: false, waiting: false, active: false };
const DOWN = [/ERR_CONNECTION|ERR_EMPTY_RESPONSE|ERR_FAILED|Failed to fetch/];

interface List {
  readonly files: Readonly<Record<string, string>>;
}
const list = async () =>
  JSON.parse(await readFile(join(siteDir(), 'precache.json'), 'utf8')) as List;

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
  const { files } = await list();
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

test.describe('the network gone', () => {
  test.use({ expects: DOWN });
  test('guide, note and preview work after the first visit', async ({
    place: { origin, page },
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
    const scripts = Object.keys((await list()).files).filter((file) => file.includes('zxing'));
    expect(scripts).toHaveLength(1);
    const status = await page.evaluate(async (url) => (await fetch(url)).status, `/${scripts[0]}`);
    expect(status).toBe(200);
    expect(origin.asked.filter((path) => path !== '/sw.js')).toEqual([]);
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

  for (const after of [0, 1, 60])
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
      expect(had.length).toBeLessThanOrEqual(after);
      if (after > 10) expect(had.length).toBeGreaterThan(10);
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
    await page.goto('/door-locked/danger/');
    expect(await page.evaluate(() => navigator.serviceWorker.controller)).toBeNull();
  });

  test('a full device is survived, and told', async ({ place: { origin, context, page } }) => {
    const cdp = await context.newCDPSession(page);
    await cdp.send('Storage.overrideQuotaForOrigin', {
      origin: new URL(origin.url).origin,
      quotaSize: 50_000,
    });
    await page.goto('/about/');
    await expect(page.locator('[data-state="failed"]')).toBeVisible();
    expect(await page.evaluate(() => caches.keys())).toEqual([]);
    await walkGuide(page, [['danger', 'none']]);
  });
});

test.describe('a reader who saves data', () => {
  test.use({ saves: true });
  test('downloads nothing ahead, and may ask for it', async ({ place: { origin, page } }) => {
    await page.goto('/');
    await page.goto('/about/', { waitUntil: 'networkidle' });
    expect(origin.asked).not.toContain('/sw.js');
    await expect(page.locator('[data-state="not"]')).toBeVisible();
    await page.locator('.keep').click();
    await expect(page.locator('[data-state="kept"]')).toBeVisible();
    await page.reload();
    await expect(page.locator('[data-state="kept"]')).toBeVisible();
    await expect(page.locator('.keep')).toBeHidden();
  });
});

test.describe('a newer release', () => {
  let next: string;
  let css: string;
  test.beforeAll(async () => {
    // The same site with another name for one style sheet and a mark on the first page.
    next = await mkdtemp(join(tmpdir(), 'hobnote-next-'));
    await cp(siteDir(), next, {
      recursive: true,
      filter: (path) => !/\.(?:br|gz)$/.test(path) && !isForeign(relative(siteDir(), path)),
    });
    css = Object.keys((await list()).files).find((file) => /Layout.*css$/.test(file)) ?? '';
    const renamed = css.replace('.css', '2.css');
    await rename(join(next, css), join(next, renamed));
    for (const path of pagesOf(next)) {
      const file = join(next, path.endsWith('/') ? `${path}index.html` : path);
      const html = await readFile(file, 'utf8');
      await writeFile(file, html.replace(css, renamed).replace('<main', '<main data-next'));
    }
    await keepOffline(next);
  });
  test.afterAll(() => rm(next, { recursive: true }));
  const isNew = (page: Page) => expect(page.locator('main[data-next]'));
  const cacheCount = (page: Page) => page.evaluate(async () => (await caches.keys()).length);

  test('is announced on the first page, and never changes a journey on its way', async ({
    place: { origin, context, page },
  }) => {
    await page.goto('/');
    await kept(page);
    const traveller = await context.newPage();
    await traveller.goto('/door-locked/danger/');
    await traveller.locator('main a[data-answer="none"]').click();
    await origin.release(next);

    // The browser looks for a newer worker with every page.
    await traveller.locator('main a[data-answer="ended"]').click();
    await expect.poll(async () => (await state(traveller)).waiting).toBe(true);
    await expect(traveller.getByText('newer version')).toHaveCount(0);
    await traveller.reload();
    await isNew(traveller).toHaveCount(0);

    await page.reload();
    await isNew(page).toHaveCount(0);
    await expect(page.locator('.update [role="status"]')).toHaveText(/newer version/);
    await page.locator('.update button').click();
    await expect(page.locator('.update [role="status"]')).toHaveText(/another window/);
    await traveller.locator('main a[data-answer="time"]').click();
    await isNew(traveller).toHaveCount(0);

    // A tab that is in no journey keeps what it was made of until it goes elsewhere.
    await traveller.goto('/about/');
    await page.locator('.update button').click();
    await isNew(page).toHaveCount(1);
    await expect(page.locator('.update')).toBeHidden();
    const old = (of: Page) => of.evaluate(async (url) => (await fetch(url)).ok, `/${css}`);
    expect(await old(traveller)).toBe(true);
    expect(await cacheCount(page)).toBe(2);
    await traveller.close();
    await page.goto('/door-locked/danger/');
    await isNew(page).toHaveCount(1);
    await expect.poll(() => cacheCount(page)).toBe(1);
  });

  test('is taken without a word once no tab of the old one is left', async ({
    place: { origin, context, page },
  }) => {
    await page.goto('/');
    await kept(page);
    await origin.release(next);
    await page.reload();
    await expect.poll(async () => (await state(page)).waiting).toBe(true);
    await page.close();
    const later = await context.newPage();
    // A worker of a tab just closed may take a moment to go.
    await expect(async () => {
      await later.goto('about:blank');
      await later.waitForTimeout(300);
      await later.goto('/');
      await isNew(later).toHaveCount(1, { timeout: 500 });
    }).toPass();
    await expect.poll(() => cacheCount(later)).toBe(1);
  });
});
