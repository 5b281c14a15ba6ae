// The count-down where clocks cannot be trusted. Playwright's clock stands for both of a page's
// clocks: `setSystemTime` moves the device's alone, as a person does who sets it.
import type { Page } from '@playwright/test';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { walkGuide } from './support/site.ts';
import { toWait } from './support/codes.ts';

const HOUR = 3_600_000;

const soonest = (page: Page) => page.locator('[data-left="earliest"]');
const said = (page: Page) => page.locator('.timer .said');
const asks = (page: Page) => page.locator('.timer .gap');
/** The device's clock is set; the page's own clock runs on. */
const setClock = async (page: Page, by: number) => {
  await page.clock.setSystemTime((await page.evaluate(() => Date.now())) + by);
  await page.clock.runFor(1000);
};

async function started(page: Page): Promise<void> {
  await page.clock.install();
  await walkGuide(page, [...toWait]);
  await page.locator('.timer .start').click();
  // Less than an hour since the heat stopped: 30 minutes to 4 hours are counted in full.
  await expect(soonest(page)).toHaveText(/^(30:00|29:5\d)$/);
  await expect(page.locator('[data-left="latest"]')).toHaveText(/^(4:00:00|3:59:5\d)$/);
}

test('a clock set forward ends no wait: the reader is asked, and what is denied is not counted', async ({
  page,
}) => {
  await started(page);
  await page.clock.runFor('05:00');
  await setClock(page, 3 * HOUR);
  await expect(soonest(page)).toHaveText(/^(25:00|24:5\d)$/);
  await expect(said(page)).toHaveText(/Has this much more time really passed/);
  await expect(page.locator('[data-left="gap"]')).toHaveText(/^3:00:\d\d$/);
  await axe(page);

  // Neither a reload nor a closed tab takes the claim for time.
  await page.reload();
  await expect(soonest(page)).toHaveText(/^(25:\d\d|24:5\d)$/);
  await expect(asks(page)).toBeVisible();
  await asks(page).locator('.no').click();
  await expect(asks(page)).toBeHidden();
  await expect(said(page)).toHaveText(/not counted/);
  await expect(soonest(page)).toHaveText(/^(25:\d\d|24:5\d)$/);

  // It goes on, and ends when the page has seen it all pass.
  await page.clock.runFor('24:00');
  await expect(said(page)).not.toHaveText(/may have cooled/);
  await page.clock.runFor('02:00');
  await expect(said(page)).toHaveText(/may be cool.*can still burn/);
  await expect(page.locator('body')).not.toContainText(/safe to touch/i);
  await axe(page);
});

test('a clock set back holds nothing up', async ({ page }) => {
  await started(page);
  await setClock(page, -26 * HOUR);
  await expect(soonest(page)).toHaveText(/^29:\d\d$/);
  await expect(said(page)).toHaveText(/set back/);
  await page.clock.runFor('10:00');
  await expect(soonest(page)).toHaveText(/^(20:00|19:\d\d)$/);
  await setClock(page, -HOUR);
  await page.reload();
  await expect(soonest(page)).toHaveText(/^(20:\d\d|19:\d\d)$/);
  await page.clock.runFor('21:00');
  await expect(said(page)).toHaveText(/can still burn/);
});

test('time with the page closed counts when the reader says that it passed', async ({ page }) => {
  await started(page);
  await page.goto('about:blank');
  await setClock(page, 20 * 60_000);
  await page.goto('/');
  await page.locator('.resume').click();
  await expect(soonest(page)).toHaveText(/^(30:00|29:\d\d)$/);
  await page.locator('.timer .yes').click();
  await expect(soonest(page)).toHaveText(/^(10:00|9:\d\d)$/);
  await expect(asks(page)).toBeHidden();
  await expect(said(page)).toBeEmpty();
});

test('a page already open in another tab follows, with its own journey only', async ({
  page,
  context,
}) => {
  await page.clock.install();
  await walkGuide(page, [...toWait]);
  const twin = await context.newPage();
  await twin.goto(page.url());
  const other = await context.newPage();
  await other.goto(page.url().replace('since.under-1', 'since.over-4'));
  await page.locator('.timer .start').click();
  await expect(soonest(page)).toBeVisible();
  await expect(soonest(twin)).toBeVisible();
  expect(twin.url()).toContain('w=wait.');
  await expect(soonest(other)).toBeHidden();
  expect(other.url()).not.toContain('w=');
});

test('the screen stays on while a wait runs, and no refusal is told', async ({ page }) => {
  await page.addInitScript(() => {
    const held: string[] = [];
    Object.assign(window, { held });
    Object.defineProperty(navigator, 'wakeLock', {
      value: {
        request: (kind: string) => {
          held.push(`asked ${kind}`);
          if (sessionStorage.getItem('refuse')) return Promise.reject(new Error('refused'));
          return Promise.resolve({ release: () => Promise.resolve(held.push('given back')) });
        },
      },
    });
  });
  const held = () => page.evaluate(() => (window as unknown as { held: string[] }).held);
  await page.clock.install();
  await walkGuide(page, [...toWait]);
  await page.clock.runFor(3000);
  expect(await held()).toEqual([]);
  await page.locator('.timer .start').click();
  await page.clock.runFor('05:00');
  expect(await held()).toEqual(['asked screen']);
  await page.clock.runFor('26:00');
  await expect(said(page)).toHaveText(/can still burn/);
  expect(await held()).toEqual(['asked screen', 'given back']);
  await page.evaluate(() => sessionStorage.setItem('refuse', '1'));
  await page.locator('.timer .start').click();
  await page.clock.runFor('01:00');
  await expect(soonest(page)).toHaveText(/^2[89]:\d\d$/);
  expect(await held()).toHaveLength(3);
});

test('the wish for a sound outlives a reload, and the sound comes at the end', async ({ page }) => {
  await page.addInitScript(() => {
    const tones: number[] = [];
    Object.assign(window, { tones });
    const { createOscillator } = AudioContext.prototype as { createOscillator: Make };
    type Make = (this: AudioContext) => OscillatorNode;
    AudioContext.prototype.createOscillator = function () {
      const tone = createOscillator.call(this);
      tone.addEventListener('ended', () => tones.push(tone.frequency.value));
      return tone;
    };
  });
  const tones = () => page.evaluate(() => (window as unknown as { tones: number[] }).tones);
  await started(page);
  await page.clock.runFor('31:00');
  await expect(said(page)).toHaveText(/can still burn/);
  expect(await tones(), 'no sound unless asked for').toEqual([]);
  await page.getByLabel('Play a sound').check();
  await page.reload();
  await expect(page.getByLabel('Play a sound')).toBeChecked();
  await expect(page.locator('.tap')).toBeVisible();
  await page.locator('.timer .start').click();
  await expect(page.locator('.tap')).toBeHidden();
  await page.clock.runFor('31:00');
  await expect(said(page)).toHaveText(/can still burn/);
  // Told by the sound itself when each tone has been played.
  await expect.poll(tones).toEqual([660, 880]);
});
