/** What assistive technology is told of each kind of page, pinned. */
import { formatFragment } from '../../src/address/fragment.ts';
import type { Locator } from '@playwright/test';
import { expect, siteUrl, test } from './support/fixtures.ts';
import { codeFor, shownCode, to } from './support/note.ts';

test.skip(({ isMobile }) => !isMobile, 'the tree is the same on every screen');

/** The tree as text; the port of the served site is not part of it. */
const treeOf = async (place: Locator): Promise<string> =>
  (await place.ariaSnapshot()).replaceAll(siteUrl(), 'https://hobnote.example/');

const kinds = [
  ['home', '/'],
  ['question', '/door-locked/doing/#j=danger.none'],
  ['question-from-right-to-left', '/ar/door-locked/doing/#j=danger.none'],
  ['step-with-timer', '/door-locked/wait/'],
  ['stop', '/door-locked/stop-fire/#j=danger.fire'],
  ['care', '/care/foil/'],
  ['lost', '/404.html'],
] as const;

for (const [kind, path] of kinds)
  test(`the tree of a page: ${kind}`, async ({ page }) => {
    await page.goto(path);
    // Scripts fill in the journey.
    await page.waitForLoadState('networkidle');
    expect(await treeOf(page.locator('body'))).toMatchSnapshot(`${kind}.txt`);
  });

test('the tree of the note', async ({ page }) => {
  await page.goto(`/note/#${formatFragment(to('stop-book'))}`);
  await shownCode(page);
  expect(await treeOf(page.locator('main'))).toMatchSnapshot('note.txt');
});

test('the tree of the preview', async ({ page }) => {
  await page.goto(`/preview/#c=${codeFor(to('stop-book'))}`);
  await expect(page.locator('.ranking li').first()).toBeVisible();
  expect(await treeOf(page.locator('.ranking'))).toMatchSnapshot('ranking.txt');
});
