// The order of checks: planned anew after each result, and back again.
import type { Locator, Page } from '@playwright/test';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';
import { CODE, open } from './support/preview.ts';

const plan = (page: Page): Locator => page.locator('section.plan');
const first = (page: Page): Locator => plan(page).locator('ol.checks > li').first();
const titles = (page: Page): Promise<string[]> =>
  plan(page).locator('ol.checks .title').allTextContents();
/** Opens the note with what it needs of its guide. */
const openPlan = async (page: Page): Promise<void> => {
  await open(page, `#c=${CODE}`);
  await expect(page.locator('.load')).toBeVisible();
};
const minutesOf = async (page: Page): Promise<number[]> => {
  const texts = await plan(page).locator('.routes dd').allTextContents();
  return texts.map((text) => Number(/\d+/.exec(text)?.[0]));
};

test('this order takes no more minutes than the others; every check says how to be safe', async ({
  page,
}) => {
  await openPlan(page);
  const [best = NaN, ...others] = await minutesOf(page);
  expect(others).toHaveLength(2);
  for (const other of others) expect(best).toBeLessThanOrEqual(other);
  const cards = plan(page).locator('.check');
  const count = await cards.count();
  expect(count).toBeGreaterThan(5);
  for (const fold of await plan(page).locator('details.more > summary').all()) await fold.click();
  for (let index = 0; index < count; index++) {
    const card = cards.nth(index);
    await card.locator('summary').click();
    await expect(card.locator('.care')).toContainText(/verified dead/i);
    await expect(card.locator('.results > li')).not.toHaveCount(0);
  }
  await axe(page);
  await noSidewaysScroll(page);
});

test('a result is taken in, kept over a reload, and undone', async ({ page }) => {
  await openPlan(page);
  const before = await titles(page);
  const [next = ''] = before;
  await first(page).locator('summary').click();
  const clear = first(page).locator('.results > li', { hasText: 'Nothing wrong here' });
  await clear.getByRole('button').click();
  await expect(plan(page).locator('.done')).toContainText(next);
  await expect(plan(page).getByRole('heading', { name: 'Order of checks' })).toBeFocused();
  expect(await titles(page)).not.toContain(next);
  await axe(page);
  await page.reload();
  await expect(plan(page).locator('.done')).toContainText(next);
  await plan(page)
    .getByRole('button', { name: `Undo: ${next}` })
    .click();
  await expect(plan(page).locator('.done')).toHaveCount(0);
  expect(await titles(page)).toEqual(before);
});

test('a result that finds the fault raises its share and names it', async ({ page }) => {
  await openPlan(page);
  await first(page).locator('summary').click();
  const found = first(page).locator('.results > li', { hasNotText: 'Nothing wrong here' }).first();
  const moves = await found.locator('li').first().textContent();
  const [, was, becomes] = /: (?:under )?([\d.]+)%.*?([\d.]+)%/.exec(moves ?? '') ?? [];
  expect(Number(becomes)).toBeGreaterThan(Number(was));
  await found.getByRole('button').click();
  await expect(plan(page).locator('.done .found li')).not.toHaveCount(0);
  await expect(plan(page).locator('.now')).toContainText('Most likely now');
  await axe(page);
});

test('the load: by model first asked for, weighed part by part', async ({ page }) => {
  await openPlan(page);
  const load = page.locator('.load');
  const parts = load.locator('.parts > li');
  await expect(parts.first()).toHaveText(/^Latch assembly.*\(by model\)$/);
  await expect(load).toContainText('No model number came with this code.');
  await load.locator('summary').click();
  await expect(load.locator('dd')).not.toHaveCount(0);
  const rows = await load.locator('dl > div').allTextContents();
  const money = (text: string, of: RegExp) => Number(of.exec(text)?.[1]);
  const saving = rows.filter((row) => money(row, /Saves \$(\d+)/) > money(row, /costs \$(\d+)/));
  expect(rows.length).toBeGreaterThan(saving.length);
  await expect(parts).toHaveCount(saving.length);
  await open(page, `#c=${CODE}&m=RX-100`);
  await expect(load).toBeVisible();
  await expect(load).not.toContainText('No model number');
});
