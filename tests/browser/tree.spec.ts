/** What assistive technology is told of each kind of page, pinned. */
import { formatFragment } from '../../src/guide/fragment.ts';
import { expect, test } from './support/fixtures.ts';
import { codeFor, shownCode, to } from './support/note.ts';

test.skip(({ isMobile }) => !isMobile, 'the tree is the same on every screen');

const kinds = [
  ['home', '/'],
  ['question', '/door-locked/doing/#j=danger.none'],
  ['question-from-right-to-left', '/ar/door-locked/doing/#j=danger.none'],
  ['step-with-timer', '/door-locked/wait/'],
  ['stop', '/door-locked/stop-fire/#j=danger.fire'],
  ['care', '/care/foil/'],
  ['about', '/about/'],
  ['lost', '/404.html'],
] as const;

for (const [kind, path] of kinds)
  test(`the tree of a page: ${kind}`, async ({ page }) => {
    await page.goto(path);
    await expect(page.locator('body')).toMatchAriaSnapshot({ name: `${kind}.aria.yml` });
  });

test('the tree of the note', async ({ page }) => {
  await page.goto(`/note/#${formatFragment(to('stop-book'))}`);
  await shownCode(page);
  await expect(page.locator('main')).toMatchAriaSnapshot({ name: 'note.aria.yml' });
});

test('the tree of the preview', async ({ page }) => {
  // A day long past: how long ago it was is not told by the day the test runs.
  await page.goto(`/preview/#c=${codeFor(to('stop-book'))}`);
  await expect(page.locator('.ranking li').first()).toBeVisible();
  await expect(page.locator('.ranking')).toMatchAriaSnapshot({ name: 'ranking.aria.yml' });
});
