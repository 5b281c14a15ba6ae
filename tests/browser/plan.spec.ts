// The order of checks: planned anew after each result, and back again.
import type { Locator, Page } from '@playwright/test';
import { models, textFile } from '../../src/content/load.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll, targetsAtLeast } from './support/layout.ts';
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

test('the order says what it takes; every check says how to be safe', async ({ page }) => {
  await openPlan(page);
  await page.locator('.figures > summary').click();
  await expect(page.locator('.figures dl').last()).toContainText(
    /Expected time to find the fault\s*\d+ minutes/,
  );
  await axe(page);
  await plan(page).locator('.more > summary').click();
  const { checks = [], access = [] } = models()['door-locked'] ?? {};
  const named = textFile('en', 'model')['checks'] as Record<string, { readonly name: string }>;
  const words = textFile('en', 'diagnosis') as Record<string, Record<string, string>>;
  const cautions = new Set<string>();
  const cards = plan(page).locator('.checks .check');
  // The later ones are made once they are asked for.
  await expect(cards.nth(5)).toBeVisible();
  const count = await cards.count();
  for (let index = 0; index < count; index++) {
    const card = cards.nth(index);
    await card.locator('> summary').click();
    await expect(card.locator('details.care')).toContainText(/verified dead/i);
    // Its own cautions, and those of what it needs opened.
    const said = await card.innerText();
    const check = checks.find(({ id }) => said.startsWith(named[id]?.name ?? '?'));
    const opened = access.filter(({ id }) => said.includes(words['access']?.[id] ?? '?'));
    const due = [check, ...opened].flatMap((one) => one?.cautions ?? []);
    expect(new Set(await card.locator('ul.care li').allTextContents()), said).toEqual(
      new Set(due.map((caution) => words['cautions']?.[caution])),
    );
    for (const caution of due) cautions.add(caution);
    // In full once; from the second check on it is a line.
    await expect(card.locator('details.care')).toHaveJSProperty('open', index === 0);
    await targetsAtLeast(page, '.results button', 72);
    await expect(plan(page).locator('.checks .check[open]')).toHaveCount(1);
  }
  expect([...cautions]).toEqual(
    expect.arrayContaining(['hot-oven', 'moving-latch', 'sharp-edges', 'door-weight', 'draw-out']),
  );
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
  await expect(plan(page).getByRole('heading', { name: 'Checks' })).toBeFocused();
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

test('a result that finds the fault raises its odds, names it, and opens the next check', async ({
  page,
}) => {
  await openPlan(page);
  await first(page).locator('summary').click();
  const found = first(page).locator('.results > li', { hasNotText: 'Nothing wrong here' }).first();
  const fault = (await found.locator('.quiet').textContent()) ?? '';
  await found.getByRole('button').click();
  await expect(plan(page).locator('.done .found li').first()).toContainText(fault);
  await expect(page.locator('.ranking .fault').first()).toContainText(fault);
  await expect(plan(page).locator('.now')).toContainText(`Most likely now: ${fault}`);
  await expect(first(page).locator('.check')).toHaveJSProperty('open', true);
  await expect(first(page).locator('details.care')).toHaveJSProperty('open', false);
  await axe(page);
});

test('the load: by model first asked for, weighed part by part; what a check clears leaves it', async ({
  page,
}) => {
  await openPlan(page);
  const load = page.locator('.load');
  const parts = load.locator('.parts > li:not(.call)');
  await expect(parts.first()).toHaveText('Latch assembly with motor');
  await expect(load).toContainText('No model number: call');
  await page.locator('.kit > summary').click();
  const rows = await page.locator('.weighed > div').allTextContents();
  const money = (text: string, of: RegExp) => Number(of.exec(text)?.[1]);
  const saving = rows.filter((row) => money(row, /Saves \$(\d+)/) > money(row, /costs \$(\d+)/));
  expect(rows.length).toBeGreaterThan(saving.length);
  await expect(parts).toHaveCount(saving.length);
  await plan(page).getByText('Latch motor continuity').click();
  await plan(page).locator('.results li', { hasText: 'Nothing wrong here' }).click();
  await plan(page).getByText('Latch, rod and hook by eye').first().click();
  await plan(page).locator('.results li', { hasText: 'Nothing wrong here' }).click();
  await expect(parts.filter({ hasText: 'Latch assembly' })).toHaveCount(0);
  await open(page, `#c=${CODE}&m=RX-100`);
  await expect(load).toBeVisible();
  await expect(load).not.toContainText('No model number');
});
