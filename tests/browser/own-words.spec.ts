// What people write in their own words stays out of addresses, history and the copy to resume from.
import { giveAnswer } from './support/site.ts';
import type { Page } from '@playwright/test';
import { FINE, expect, test } from './support/fixtures.ts';
import { codeFor, keptTexts, open, qrOf, shownCode, to } from './support/note.ts';

test.use(FINE);

const remark = 'Ring twice & wait. 100% #1';
const model = 'XY 123/4';

/**
 * Every address this tab can go back or forward to, and what is kept beyond the tab. What was typed
 * into the address bar itself (`userTypedURL`) is the browser's own note, out of a page's reach.
 */
async function traces(page: Page): Promise<string> {
  const cdp = await page.context().newCDPSession(page);
  const { entries } = await cdp.send('Page.getNavigationHistory');
  await cdp.detach();
  expect(entries.length).toBeGreaterThan(0);
  const stored = await page.evaluate(() => JSON.stringify(localStorage));
  const all = [...entries.map(({ url }) => url), stored].join('\n');
  return decodeURIComponent(all).replaceAll('+', ' ');
}
/** From the second question to a note, by a short way. */
async function toNote(page: Page): Promise<void> {
  await page.locator('main a[data-answer="running"]').click();
  await page.locator('main a[data-answer="wont-stop"]').click();
  await page.locator('[data-note]').click();
}
const written = (page: Page) => page.getByLabel('Anything else?');

test('a remark outlives reload and change of an answer, and leaves no trace in history', async ({
  page,
}) => {
  const note = to('near', { details: { fuel: 'gas' } });
  await open(page, note);
  await page.getByLabel('Model number').fill(model);
  await written(page).fill(remark);
  await expect(page.locator('.more')).toContainText('stays in this tab');
  await expect.poll(() => page.url()).toContain('&k=');
  expect(await traces(page)).not.toMatch(/Ring|XY 12/);
  expect((await qrOf(page)).fragment).toMatchObject({ model, remark });
  await page.reload();
  await expect(written(page)).toHaveValue(remark);

  await page.locator('.change').nth(1).click();
  await toNote(page);
  await expect(written(page)).toHaveValue(remark);
  await expect(page.getByLabel('Model number')).toHaveValue(model);
  expect(await traces(page)).not.toMatch(/Ring|XY 12/);

  const before = page.url();
  // Another journey in the same tab is another note.
  await page.goto('/door-locked/danger/');
  await giveAnswer(page.locator('main a[data-answer="none"]'));
  await toNote(page);
  await expect(written(page)).toHaveValue('');
  await page.goto(before);
  await expect(written(page)).toHaveValue(remark);
  await written(page).fill('');
  await page.getByLabel('Model number').fill('');
  expect(await keptTexts(page)).toEqual([]);
});

test('a link that holds a remark is shown and scrubbed, on the note and the preview', async ({
  page,
}) => {
  const note = to('stop-book', { model, remark });
  await open(page, note);
  await expect(written(page)).toHaveValue(remark);
  const code = await shownCode(page);
  expect(await traces(page)).not.toMatch(/Ring|XY 12/);
  await page.goto('about:blank');

  const link = new URLSearchParams({ c: codeFor(note), m: model, r: remark });
  await page.goto(`/preview/#${String(link)}`);
  await expect(page.locator('main')).toContainText(remark);
  expect(codeFor(note)).toBe(code);
  await page.reload();
  await expect(page.locator('main')).toContainText(remark);
  await expect(page.locator('main')).toContainText(model);
  expect(await traces(page)).not.toMatch(/Ring|XY 12/);
  // The next caller's code brings nothing of it.
  await page.getByRole('button', { name: 'Another code' }).click();
  await page.locator('#code').fill(codeFor(to('stop-gas')));
  await expect(page.locator('main')).not.toContainText(remark);
  await page.reload();
  await expect(page.locator('#preview h2').first()).toBeVisible();
  await expect(page.locator('main')).not.toContainText(remark);
});

test('the about page takes it off the device', async ({ page }) => {
  await open(page, to('stop-book', { remark }));
  await expect(written(page)).toHaveValue(remark);
  expect(await keptTexts(page)).toHaveLength(1);
  await page.goto('/about/');
  await page.locator('.forget summary').click();
  await page.locator('.forget button').click();
  expect(await keptTexts(page)).toEqual([]);
  await page.goBack();
  await expect(written(page)).toHaveValue('');
});
