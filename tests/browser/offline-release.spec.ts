// A newer release: kept beside the one in use, and never in the midst of a journey.
import { readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from '@playwright/test';
import { keepOffline } from '../../src/site/build/keep-offline.ts';
import { expect } from './support/fixtures.ts';
import { DOWN, NONE, kept, list, state, test } from './support/offline.ts';
import { copyOf } from './support/releases.ts';
import { pagesOf, giveAnswer } from './support/site.ts';

test.describe('a newer release', () => {
  // One worker, one copy.
  test.describe.configure({ mode: 'default' });
  // What is asked for while one server takes the other's place is cut; what it had alone is gone.
  test.use({ expects: [new RegExp(`${DOWN[0]?.source ?? ''}|404: .*/kept/rest`)] });
  let next: string;
  let css: string;
  test.beforeAll(async ({ small }) => {
    // The same site with another name for one style sheet and a mark on the first page.
    next = await copyOf(/\.(?:br|gz)$/);
    css = (await list(small)).find((file) => /Layout.*css$/.test(file)) ?? '';
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
    await giveAnswer(traveller.locator('main a[data-answer="none"]'));
    await origin.release(next);

    // The browser looks for a newer worker with every page.
    await traveller.locator('main a[data-answer="running"]').click();
    await expect.poll(async () => (await state(traveller)).waiting).toBe(true);
    await expect(traveller.getByText('newer version')).toHaveCount(0);
    await traveller.reload();
    await isNew(traveller).toHaveCount(0);

    await page.reload();
    await isNew(page).toHaveCount(0);
    await expect(page.locator('.update [role="status"]')).toHaveText(/newer version/);
    await page.locator('.update button').click();
    await expect(page.locator('.update [role="status"]')).toHaveText(/another window/);
    await traveller.locator('main a[data-answer="ended"]').click();
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
    // A worker of a tab just closed may take a moment to go: the page is opened until it has, and left
    // between, for it has a tab again otherwise.
    await expect
      .poll(async () => {
        await later.goto('/');
        const found = await later.locator('main[data-next]').count();
        if (found === 0) await later.goto('about:blank');
        return found;
      })
      .toBe(1);
    await expect.poll(() => cacheCount(later)).toBe(1);
  });

  test('takes the place of one that was never kept whole, at once', async ({
    place: { origin, page },
  }) => {
    origin.fate = (path) => (path.startsWith('/_astro/kept/rest.') ? 'cut' : 'answer');
    await page.goto('/door-locked/danger/');
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await origin.release(next);
    origin.fate = () => 'answer';
    await page.reload();
    // Chromium looks for a newer worker once the one in use has rested for a second: no page is opened meanwhile.
    const inUse = { ...NONE, active: true };
    await expect
      .poll(async () => ((await cacheCount(page)) === 2 ? state(page) : undefined))
      .toEqual(inUse);
    await page.goto('/door-locked/danger/');
    await isNew(page).toHaveCount(1);
    origin.fate = () => 'cut';
    await page.goto('/about/');
    await isNew(page).toHaveCount(1);
  });
});
