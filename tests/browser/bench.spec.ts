// The sensor bench with what people type by mistake.
import type { Page } from '@playwright/test';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll, targetsAtLeast } from './support/layout.ts';

test('each mistake has its own words, also one after another', async ({ page }) => {
  await page.goto('/bench/');
  const field = page.locator('#ohms');
  const trouble = page.locator('#ohms-trouble');
  const told = new Set<string>();
  const mistakes = ['abc', '-5', '1000000000', '1,080'];
  for (const typed of mistakes) {
    await field.fill(typed);
    await expect(trouble, typed).not.toBeEmpty();
    await expect(field).toHaveAttribute('aria-invalid', 'true');
    await expect(field).toHaveValue(typed);
    told.add((await trouble.textContent()) ?? '');
  }
  expect(told.size).toBe(mistakes.length);
  await axe(page);
  await field.fill('1080');
  await expect(trouble).toBeEmpty();
});

const fill = async (page: Page, ohms: string, at: string): Promise<void> => {
  await page.locator('#ohms').fill(ohms);
  await page.locator('#at').fill(at);
};

// A platinum sensor of 1000 Ω reads 1082.25 Ω at 70 °F (IEC 60751, computed); the limits of
// drift, open and short are common practice, no source.
const READINGS = [
  ['fits', '1082', '70'],
  ['drifted', '1150', '70'],
  ['open', 'OL', '70'],
  ['open', '1000000', '70'],
  ['shorted', '0.5', '70'],
  ['other-kind', '108', '70'],
  // Good, but of the other common slope (3750 ppm/K, chart from memory).
  ['other-kind', '2697', '900'],
  // A leak of 4 kΩ across a good sensor; a bad joint.
  ['drifted', '852', '70'],
  ['beyond', '5000', '70'],
] as const;

test('each reading has its verdict, in words', async ({ page }) => {
  await page.goto('/bench/');
  const told = new Set<string>();
  for (const [verdict, ohms, at] of READINGS) {
    await fill(page, ohms, at);
    await expect(page.locator('.verdict'), ohms).toHaveAttribute('data-verdict', verdict);
    const word = (await page.locator('.verdict .word').textContent()) ?? '';
    expect(word).toMatch(/\S/);
    told.add(`${verdict} ${word}`);
    await axe(page);
  }
  // One word for each verdict.
  expect(told.size).toBe(new Set(READINGS.map(([verdict]) => verdict)).size);
});

test('overload has a button: a keypad of digits has no letters', async ({ page }) => {
  await page.goto('/bench/');
  await fill(page, '', '70');
  await page.getByRole('button', { name: 'OL' }).click();
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'open');
  await targetsAtLeast(page, '.entry button', 64);
});

test('the technical sheet’s slope decides, and the other one’s verdict stands beside it', async ({
  page,
}) => {
  await page.goto('/bench/');
  await fill(page, '2697', '900');
  await expect(page.locator('.verdict')).toContainText('3750');
  await page.getByLabel('1000 Ω, 3750', { exact: true }).check();
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'fits');
  await expect(page.locator('.found')).toContainText('2750.4 Ω: Fits another kind');
  // The standard's class is not that sensor's.
  await expect(page.locator('.found')).not.toContainText('Class B');
  await noSidewaysScroll(page);
  await page.reload();
  await expect(page.getByLabel('1000 Ω, 3750', { exact: true })).toBeChecked();
});

test('the reading stands on the curve, and what the control believes apart from it', async ({
  page,
}) => {
  await page.goto('/bench/');
  const [read, believed] = [page.locator('svg .read'), page.locator('svg .believed')];
  const at = async () => ({
    read: Number(await read.getAttribute('cx')),
    believed: Number(await believed.getAttribute('cx')),
  });
  await fill(page, '1082.25', '70');
  const right = await at();
  expect(Math.abs(right.read - right.believed)).toBeLessThan(1);
  // 1569.10 Ω is 300 °F (IEC 60751, computed).
  await page.locator('#ohms').fill('1569.10');
  await expect(page.locator('.found')).toContainText('300');
  const off = await at();
  expect(off.believed - off.read).toBeGreaterThan(10);
});

test('both units say the same, and the choice is kept in the address', async ({ page }) => {
  await page.goto('/bench/');
  await fill(page, '1569.10', '300');
  await page.getByLabel('°C', { exact: true }).check();
  await page.locator('#at').fill('148.9');
  await expect(page.locator('.found')).toContainText('148.9 °C');
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'fits');
  await page.reload();
  await expect(page.getByLabel('°C', { exact: true })).toBeChecked();
  await expect(page.locator('#ohms')).toHaveValue('1569.10');
});

test('a decimal comma is read, a doubtful one is asked about', async ({ page }) => {
  await page.goto('/bench/');
  await fill(page, '1082,25', '70');
  await expect(page.locator('.verdict')).toHaveAttribute('data-verdict', 'fits');
  await page.locator('#ohms').fill('1,082');
  await expect(page.locator('#ohms-trouble')).toContainText('1.082');
  await expect(page.locator('#ohms')).toHaveValue('1,082');
});

test('added resistance makes the control believe the oven is hotter', async ({ page }) => {
  await page.goto('/bench/');
  await fill(page, '', '70');
  await page.locator('#added').fill('100');
  // 1182.25 Ω is 116.5 °F by the curve of IEC 60751.
  await expect(page.locator('.told')).toContainText(/reads 11[67]/);
});
