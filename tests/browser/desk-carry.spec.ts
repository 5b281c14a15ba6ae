// An answer that the caller never gave is never given for them: the desk keeps answers by their
// page, and a page that only borrows another's sentences is asked anew, caution and all.
import { expect, test } from './support/fixtures.ts';
import { choose, say } from './support/desk.ts';

const WAY = 'danger.none~what.no-light~gas-off.done~spark.clicks~which.one~near.cool';

test('a hand held near a gas burner says nothing of the electric one', async ({ page }) => {
  await page.goto(`/desk/#g=burner&j=${WAY}`);
  // Danger is asked about first, every time.
  await choose(page, 'None of these');
  await expect(say(page)).toHaveText('Look at the cold burner. What do you see?');

  await page.locator('.journey li button').nth(1).click();
  await expect(say(page)).toHaveText('What is wrong with the burner?');
  await choose(page, 'An electric burner stays cold');
  await choose(page, 'A coil you can see');
  await choose(page, 'It stayed cold');
  await choose(page, 'Just one');

  await expect(say(page)).toHaveText('Is the burner cold?');
  const care = page.locator('.middle .care');
  await expect(care).toBeVisible();
  await expect(care.locator('.tick')).toBeVisible();
  await expect(care.locator('.ticked')).toHaveCount(0);
  await expect(page.locator('.choices .present')).toHaveCount(0);
  const { hash } = new URL(page.url());
  expect(hash).toContain('el-which.one');
  expect(hash).not.toContain('near-el');
});

test('a wait counts how long ago the heat ended, after a power cut and an error too', async ({
  page,
}) => {
  const slowest = page.locator('.step-timer .faces strong').last();
  for (const [answers, wait, left] of [
    ['since.over-4~near.heat', 'wait', /^1[45]:\d\d$/],
    ['since.1-to-4~near.heat', 'wait', /^(3:00:00|2:59:\d\d)$/],
    ['since.unsure~near.heat', 'wait', /^(4:00:00|3:59:\d\d)$/],
    ['since.outage~house-power.yes~near.heat', 'wait', /^(4:00:00|3:59:\d\d)$/],
    ['since.running~still-cleaning.error', 'wait-cold', /^(4:00:00|3:59:\d\d)$/],
  ] as const) {
    const hash = `#g=door-locked&j=danger.none~${answers}`;
    await page.goto('about:blank');
    await page.goto(`/desk/${hash}`);
    await choose(page, 'None of these');
    await page.locator('.step-timer button').click();
    await expect(slowest).toHaveText(left);

    await page.goto('about:blank');
    await page.goto(`/door-locked/${wait}/${hash}`);
    await page.locator('.timer .start').click();
    await expect(page.locator('[data-left="latest"]')).toHaveText(left);
  }
});
