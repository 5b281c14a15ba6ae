// An answer that the caller never gave is never given for them: the desk keeps answers by their
// page, and a page that only borrows another's sentences is asked anew, caution and all.
import type { Page } from '@playwright/test';
import { expect, test } from './support/fixtures.ts';
import { say } from './support/desk.ts';

const WAY = 'danger.none~what.no-light~gas-off.done~power.yes~click.clicks~which.one~near.cool';

const choose = (page: Page, answer: string) =>
  page.locator('.choices').getByRole('button', { name: answer }).click();

test('a hand held near a gas burner says nothing of the electric one', async ({ page }) => {
  await page.goto(`/desk/#g=burner&j=${WAY}`);
  // Danger is asked about first, every time.
  await choose(page, 'None of these');
  await expect(say(page)).toHaveText('Look at the burner, cold. What do you see?');

  await page.locator('.journey li button').nth(1).click();
  await expect(say(page)).toHaveText('What is wrong with the burner?');
  await choose(page, 'An electric burner stays dark');
  await expect(say(page)).toHaveText('Turn the burner off');
  await page.locator('.care .tick').click();
  await choose(page, 'All are off');
  await page.locator('.care .tick').click();
  await choose(page, 'A coil you can see');
  await choose(page, 'It stayed dark and cold');
  await choose(page, 'Just one');

  await expect(say(page)).toHaveText('Hold your hand near the burner. Is there heat?');
  const care = page.locator('.middle .care');
  await expect(care).toBeVisible();
  await expect(care.locator('.tick')).toBeVisible();
  await expect(care.locator('.ticked')).toHaveCount(0);
  await expect(page.locator('.choices .present')).toHaveCount(0);
  const { hash } = new URL(page.url());
  expect(hash).toContain('el-which.one');
  expect(hash).not.toContain('near-el');
});

test('a wait after an error or a blank display counts how long ago the heat ended', async ({
  page,
}) => {
  const before = 'danger.none~doing.ended~display.blank';
  const after = (at: string) => `${before}~since-cold.${at}~fan-cold.quiet~near-cold.warm`;
  const slowest = page.locator('.step-timer .faces strong').last();
  for (const [answer, left] of [
    ['over-4', /^1[45]:\d\d$/],
    ['1-to-4', /^(3:00:00|2:59:\d\d)$/],
    ['unsure', /^(4:00:00|3:59:\d\d)$/],
  ] as const) {
    await page.goto('about:blank');
    await page.goto(`/desk/#g=door-locked&j=${after(answer)}`);
    await choose(page, 'None of these');
    await page.locator('.step-timer button').click();
    await expect(slowest).toHaveText(left);

    await page.goto('about:blank');
    await page.goto(`/door-locked/wait-cold/#g=door-locked&j=${after(answer)}`);
    await page.locator('.timer .start').click();
    await expect(page.locator('[data-left="latest"]')).toHaveText(left);
  }
});
