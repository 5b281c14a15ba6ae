// A page of every kind as readers set it up for themselves: colours, motion, zoom, spacing, turning.
import type { Page } from '@playwright/test';
import { mainLanguage } from '../../src/content/load.ts';
import { FINE, expect, test } from './support/fixtures.ts';
import { borderless, lostDrawings, ringSeen, unreadable } from './support/forced.ts';
import { tabOrder } from './support/keyboard.ts';
import { noSidewaysScroll } from './support/layout.ts';
import { moving, noteSmoothScrolls } from './support/motion.ts';
import { openCautioned, places, twoLanguages } from './support/places.ts';
import { readQr } from './support/qr.ts';
import { shownText, spaceText, spoiltTexts } from './support/spacing.ts';
import { tightTargets } from './support/targets.ts';

/** 1280 × 1024 at 400 % (WCAG 1.4.10, with the height as well). */
const ZOOMED = { width: 320, height: 256 };
const UPRIGHT = { width: 360, height: 740 };
/** Opens everything that folds, but the danger list: it lies over the page. */
const unfold = (page: Page) =>
  page.evaluate(() => {
    for (const fold of document.querySelectorAll('main details')) {
      // Folds of one name shut each other.
      fold.removeAttribute('name');
      fold.setAttribute('open', '');
    }
  });

async function forcedColors(page: Page, colorScheme: 'light' | 'dark'): Promise<void> {
  await page.emulateMedia({ forcedColors: 'active', colorScheme });
  expect(await borderless(page)).toEqual([]);
  expect(await lostDrawings(page)).toEqual([]);
  // Texts, signal words, clocks and progress.
  expect(await unreadable(page)).toEqual([]);
  await ringSeen(page.locator('main :is(a, button, input):visible').first());
  await page.emulateMedia({ forcedColors: 'none', colorScheme: 'light' });
}

async function reducedMotion(page: Page): Promise<void> {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  expect(await moving(page)).toEqual([]);
  for (const summary of await page.locator('summary:visible').all()) {
    await summary.click();
    expect(await moving(page)).toEqual([]);
    await summary.click();
  }
}

/** What stays where it is while the page scrolls: how much of the window it takes. */
const stuck = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll('body *')]
      .filter((element) => /fixed|sticky/.test(getComputedStyle(element).position))
      .filter((element) => element.checkVisibility())
      .reduce((sum, element) => sum + element.getBoundingClientRect().height / innerHeight, 0),
  );

async function zoomed(page: Page, tab: boolean): Promise<void> {
  await page.setViewportSize({ width: 1280, height: 1024 });
  const wide = tab ? await tabOrder(page) : [];
  await page.setViewportSize(ZOOMED);
  await noSidewaysScroll(page);
  expect(await stuck(page), 'share of the window').toBeLessThan(1 / 3);
  const stops = tab ? await tabOrder(page) : [];
  expect(stops.map(({ name }) => name)).toEqual(wide.map(({ name }) => name));
  // 2.4.7 and 2.4.11.
  expect(stops.filter(({ ring, seen }) => !ring || !seen)).toEqual([]);
  await page.locator('.danger-list > summary').click();
  await noSidewaysScroll(page);
  const last = page.locator('.danger-list li:last-child :is(a, button)');
  await last.focus();
  await expect(last).toBeInViewport({ ratio: 0.9 });
  await page.locator('.danger-list > summary').click();
}

async function spaced(page: Page): Promise<void> {
  await page.setViewportSize(UPRIGHT);
  await spaceText(page);
  await unfold(page);
  await noSidewaysScroll(page);
  expect(await spoiltTexts(page)).toEqual([]);
  await page.evaluate(() => (document.adoptedStyleSheets = []));
}

async function turned(page: Page): Promise<void> {
  const sideways = { width: UPRIGHT.height, height: UPRIGHT.width };
  // More than once where a fold was still fetching what it holds.
  await expect(async () => {
    await page.setViewportSize(UPRIGHT);
    const upright = await shownText(page);
    expect(upright.length).toBeGreaterThan(100);
    await page.setViewportSize(sideways);
    expect(await shownText(page)).toBe(upright);
  }).toPass();
  for (const size of [UPRIGHT, sideways]) {
    await page.setViewportSize(size);
    expect(await tightTargets(page)).toEqual([]);
  }
  await noSidewaysScroll(page);
}

for (const [place, { kind, speaks, open }] of places.entries())
  for (const [nth, language] of twoLanguages(speaks).entries())
    test(`${kind}, ${language}: bears what its reader sets`, async ({ page }) => {
      await noteSmoothScrolls(page);
      await page.setViewportSize(UPRIGHT);
      await open(page, language);
      // Colors, motion and the Tab key are the same in every language; long words and directions are not.
      if (nth === 0) {
        const scheme = place % 2 === 0 ? 'light' : 'dark';
        await test.step('forced colors', () => forcedColors(page, scheme));
        await test.step('reduced motion (2.3.3)', () => reducedMotion(page));
      }
      await test.step('400 % zoom (1.4.10, 2.4.11)', () => zoomed(page, nth === 0));
      await test.step('text spacing (1.4.12)', () => spaced(page));
      await test.step('turned, by finger (1.3.4, 2.5.5)', () => turned(page));
    });

test('in forced colours the signal words still tell hazards apart', async ({ page }) => {
  await page.emulateMedia({ forcedColors: 'active' });
  for (const language of twoLanguages('all')) {
    const words = new Map<string, string>();
    for (const signal of ['danger', 'warning', 'caution', 'notice']) {
      await openCautioned(page, language, signal);
      const word = page.locator(`.care.${signal} .word`);
      await expect(word).toBeInViewport();
      words.set(signal, await word.innerText());
      await expect(page.locator('.care')).toHaveCSS('border-top-style', 'solid');
      await ringSeen(page.locator('.answers a, .calls a, .to-note a').first());
    }
    expect(new Set(words.values()).size, language).toBe(4);
    expect([...words.values()].every((word) => word.length > 2)).toBe(true);
  }
});

test.describe('on a fine screen', () => {
  test.use(FINE);
  test('the note’s square code is read in forced colors, and shown large it stands still', async ({
    page,
  }) => {
    await noteSmoothScrolls(page);
    await places.find(({ kind }) => kind === 'note')?.open(page, mainLanguage());
    // The decoder reads dark on light only.
    await page.emulateMedia({ forcedColors: 'active', reducedMotion: 'reduce' });
    expect(await readQr(page.locator('.qr svg'))).toContain('#c=');
    await page.locator('.pass button:has(+ dialog)').click();
    await expect(page.locator('dialog.large')).toBeVisible();
    expect(await moving(page)).toEqual([]);
  });
});
