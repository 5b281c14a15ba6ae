/** What assistive technology is told of each kind of page, pinned: roles, names and states. */
import { formatFragment } from '../../src/address/fragment.ts';
import type { Locator } from '@playwright/test';
import { firm, languages } from '../../src/content/load.ts';
import { expect, test } from './support/fixtures.ts';
import { codeFor, shownCode, to } from './support/note.ts';

/**
 * Roles and names, with their states: neither texts, nor addresses, nor codes. Numbers to call and
 * the firm's name are another copy's own.
 */
const treeOf = async (place: Locator): Promise<string> =>
  (await place.ariaSnapshot())
    .split('\n')
    .filter((line) => !/^\s*- (?:\/url|text):/.test(line))
    .map((line) => line.replace(/^(\s*- [a-z]+): .*$/, '$1').replace(/:$/, ''))
    .join('\n')
    .replaceAll(/\(\d{3}\)\s555-01\d\d/g, '(number)')
    .replaceAll(firm().name, '(firm)');

const kinds = [
  ['home', '/'],
  ['question', '/door-locked/since/#j=danger.none'],
  ['question-from-right-to-left', '/ar/door-locked/since/#j=danger.none'],
  ['step-with-timer', '/door-locked/wait/'],
  ['stop', '/door-locked/stop-fire/#j=danger.fire'],
  ['care', '/care/foil/'],
  ['lost', '/404.html'],
] as const;

for (const [kind, path] of kinds)
  test(`the tree of a page: ${kind}`, async ({ page }) => {
    test.skip(
      path.startsWith('/ar/') && !languages().includes('ar'),
      'this copy does not speak Arabic',
    );
    // Module scripts fill in the journey before the page has loaded.
    await page.goto(path);
    expect(await treeOf(page.locator('body'))).toMatchSnapshot(`${kind}.txt`);
  });

test('the tree of the note', async ({ page }) => {
  await page.goto(`/note/#${formatFragment(to('stop-book'))}`);
  await shownCode(page);
  expect(await treeOf(page.locator('main'))).toMatchSnapshot('note.txt');
});

test('the tree of the preview', async ({ page }) => {
  await page.goto(`/preview/#c=${codeFor(to('stop-book'))}`);
  expect(await treeOf(page.locator('.work'))).toMatchSnapshot('ranking.txt');
});
