import { formatFragment } from '../../src/address/fragment.ts';
import { axe } from './support/axe.ts';
import { FINE, expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';
import {
  addressOf,
  codeFor,
  guide,
  keptTexts,
  made,
  open,
  qrOf,
  shownCode,
  to,
} from './support/note.ts';

test.use(FINE);

test('what a code cannot hold is named, and goes in the long form', async ({ page }) => {
  const fragment = to('stop-book', { error: 'Fé9 ☃' });
  await open(page, fragment);
  expect(await shownCode(page)).toBe(codeFor({ ...fragment, error: '' }));
  await expect(page.locator('.left-out')).toContainText('é ☃');
  await expect(page.getByLabel('What the display showed')).toHaveValue('Fé9 ☃');
  expect((await qrOf(page)).fragment.error).toBe('Fé9 ☃');
  await axe(page);
  await page.getByLabel('What the display showed').fill('A'.repeat(25));
  await expect(page.locator('.left-out')).toContainText('24');
  await page.getByLabel('What the display showed').fill('A'.repeat(24));
  await expect(page.locator('.left-out')).toBeEmpty();
  expect(await shownCode(page)).toBe(codeFor({ ...fragment, error: 'A'.repeat(24) }));
});

test('hostile text is only ever text', async ({ page }) => {
  const error = '<img src=x onerror=1>';
  const remark = '</script><script>alert(1)</script>';
  const { journey } = to('stop-book');
  await page.goto(
    `/note/#${formatFragment({ journey, details: { fuel: 'steam', constructor: 'gas' }, made, error, remark })}&m=%E2%80%AEevil%00`,
  );
  expect(await shownCode(page)).toBe(codeFor({ journey, details: {}, error }));
  await expect(page.getByLabel('What the display showed')).toHaveValue(error);
  await expect(page.getByLabel('Anything else?')).toHaveValue(remark);
  await expect(page.getByLabel('Model number')).toHaveValue('evil');
  await expect(page.locator('.told')).toContainText('Hidden characters');
  expect(await page.locator('main img, main script:not([src]):not([type])').count()).toBe(0);
  await axe(page);
});

test('twenty thousand characters are cut, said so, and still give a code', async ({ page }) => {
  const { journey } = to('near');
  await page.goto(
    `/note/#${formatFragment({ journey, details: {}, made })}&r=${'x'.repeat(20_000)}`,
  );
  expect(await shownCode(page)).toBe(codeFor({ journey, details: {} }));
  await expect(page.locator('.told p')).toHaveCount(2);
  await expect(page.getByLabel('Anything else?')).toHaveValue('x'.repeat(500));
  await expect(page.locator('.qr figcaption')).toContainText('only the code');
  expect((await qrOf(page)).fragment.remark).toBeUndefined();
  await noSidewaysScroll(page);
});

for (const [what, hash, heading] of [
  ['nothing', '', 'No answers yet'],
  ['answers of no guide', 'j=danger.none~fan.quiet&m=AB-1', 'We can’t follow these answers'],
  ['a name of every object', 'j=danger.constructor', 'We can’t follow these answers'],
  ['noise', '%%%&j=<b>&on=2026-02-30&m=AB-1', 'No answers yet'],
] as const)
  test(`${what} in the address: the page says how to start`, async ({ page }) => {
    await page.goto(`/note/#${hash}`);
    await expect(page.getByRole('heading', { level: 2 }).first()).toHaveText(heading);
    await expect(page.locator('.groups')).toHaveCount(0);
    await axe(page);
    await page.getByRole('link', { name: 'Start at the beginning' }).click();
    await expect(page).toHaveURL((url) => url.pathname === `/${guide.id}/${guide.start}/`);
    expect(page.url()).not.toContain('AB-1');
    expect(await keptTexts(page)).toEqual(hash.includes('m=') ? ['m=AB-1'] : []);
  });

test('storage that throws loses nothing, and the page says where the text is', async ({ page }) => {
  await page.addInitScript(() => {
    for (const name of ['localStorage', 'sessionStorage'])
      Object.defineProperty(window, name, {
        get: () => {
          throw new DOMException('blocked', 'SecurityError');
        },
      });
  });
  const fragment = to('stop-book');
  await open(page, fragment);
  await expect(page.locator('.more')).toContainText('shows in the web address');
  await page.getByLabel('Model number').fill('AB-1');
  // The browser itself learns of the new address a moment after the page.
  await expect.poll(() => addressOf(page).model).toBe('AB-1');
  await page.reload();
  await expect(page.getByLabel('Model number')).toHaveValue('AB-1');
  expect(await shownCode(page)).toBe(codeFor(fragment));
});

test('the guide’s part may fail to load, wholly or by half: said in words, tried again, nothing lost', async ({
  page,
  watched,
}) => {
  const fragment = to('stop-book', { model: 'AB-1' });
  const part = '**/_astro/*/*.note.*.json';
  watched.expect(/request failed .*\.note\./);
  watched.expect(/console error .*ERR_FAILED/);
  await page.route(part, (route) => route.abort());
  await open(page, fragment);
  await expect(page.getByText('could not be loaded')).toBeVisible();
  await axe(page);
  await page.unroute(part);
  await page.route(part, (route) => route.fulfill({ body: '{"guide":' }));
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByText('Only a piece of this part')).toBeVisible();
  await page.unroute(part);
  await page.getByRole('button', { name: 'Try again' }).click();
  await expect(page.getByLabel('Model number')).toHaveValue('AB-1');
  expect(await shownCode(page)).toBe(codeFor(fragment));
});
