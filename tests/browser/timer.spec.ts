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
  // Nobody knows when the heat stopped: 30 minutes to 4 hours are counted in full.
  await expect(soonest(page)).toHaveText(/^(30:00|29:5\d)$/);
  await expect(page.locator('[data-left="latest"]')).toHaveText(/^(4:00:00|3:59:5\d)$/);
}

test('the page tells the times of day, and starts again only at a second tap', async ({ page }) => {
  await page.clock.install({ time: new Date('2026-11-27T18:00:30-06:00') });
  await walkGuide(page, [...toWait]);
  const start = page.locator('.timer .start');
  await start.click();
  const face = page.locator('.timer .clock');
  await expect(face).toHaveText(/Look again from 6:31\sPM\..*At the latest 10:01\sPM\./);
  await expect(page.locator('.timer .alarm')).toHaveText(
    /page open and the screen on.*alarm on your phone for 6:31\sPM\./,
  );
  await page.clock.runFor('05:00');
  await start.click();
  await expect(page.locator('[data-tell]')).toHaveText('Tap again to start over: Start again');
  await axe(page);
  // A tap elsewhere takes it back.
  await page.locator('h1').click();
  await start.click();
  await page.clock.runFor('01:00');
  await expect(soonest(page)).toHaveText(/^2[34]:\d\d$/);
  await start.click();
  await expect(soonest(page)).toHaveText(/^(30:00|29:5\d)$/);
  await expect(face).toHaveText(/from 6:37\sPM/);
});

test('a clock set forward in sight ends no wait: what is denied is not counted', async ({
  page,
}) => {
  await started(page);
  await page.clock.runFor('05:00');
  await setClock(page, 3 * HOUR);
  await expect(soonest(page)).toHaveText(/^(25:00|24:5\d)$/);
  await expect(said(page)).toHaveText(/Has this much more time really passed/);
  await expect(page.locator('[data-left="gap"]')).toHaveText(/^3:00:\d\d$/);
  // First in its box, before any time.
  const top = async (part: string) => (await page.locator(part).boundingBox())?.y ?? 0;
  expect(await top('.timer .no')).toBeLessThan(await top('.timer .clock'));
  await axe(page);
  await asks(page).locator('.no').click();
  await expect(asks(page)).toBeHidden();
  await expect(said(page)).toHaveText(/not counted/);
  await expect(soonest(page)).toHaveText(/^(25:\d\d|24:5\d)$/);
  // What is denied stays denied.
  await page.reload();
  await expect(soonest(page)).toHaveText(/^(25:\d\d|24:5\d)$/);

  // It goes on, and ends when the page has seen it all pass.
  await page.clock.runFor('24:00');
  await expect(said(page)).not.toHaveText(/may have cooled/);
  await page.clock.runFor('02:00');
  await expect(said(page)).toHaveText(/may have cooled.*can still burn/);
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

test('time with the page closed counts at once, but for more than the slowest oven takes', async ({
  page,
}) => {
  const back = async () => {
    await page.goto('/');
    await page.locator('.resume').click();
  };
  await started(page);
  await page.goto('about:blank');
  await setClock(page, 20 * 60_000);
  await back();
  await expect(soonest(page)).toHaveText(/^(10:00|9:\d\d)$/);
  await expect(asks(page)).toBeHidden();
  await expect(said(page)).toBeEmpty();

  await page.goto('about:blank');
  await setClock(page, 5 * HOUR);
  await back();
  // Hours later the danger comes first: a second tap.
  await expect(page.getByRole('status')).toHaveText(/danger/);
  await page.locator('.resume').click();
  await expect(soonest(page)).toHaveText(/^(10:00|9:\d\d)$/);
  // A reload takes the claim for no more than it was.
  await page.reload();
  await expect(page.locator('[data-left="gap"]')).toHaveText(/^5:00:\d\d$/);
  await page.locator('.timer .yes').click();
  await expect(soonest(page)).toHaveText('0:00');
  await expect(said(page)).toHaveText(/can still burn/);
});

test('time with the phone locked counts at once', async ({ page }) => {
  await started(page);
  const see = (state: string) =>
    page.evaluate((state) => {
      Object.defineProperty(document, 'hidden', { value: state === 'hidden', configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    }, state);
  await see('hidden');
  await page.clock.setSystemTime((await page.evaluate(() => Date.now())) + 20 * 60_000);
  await see('visible');
  await expect(soonest(page)).toHaveText(/^(10:00|9:\d\d)$/);
  await expect(asks(page)).toBeHidden();
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
  await other.goto(page.url().replace('since.unsure', 'since.over-4'));
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
  await page.locator('.timer .start').click();
  await page.clock.runFor('01:00');
  await expect(soonest(page)).toHaveText(/^2[89]:\d\d$/);
  expect(await held()).toHaveLength(3);
});

test('the wish for a sound outlives a reload, and the sound comes at the end', async ({ page }) => {
  await page.addInitScript(() => {
    const tones: number[] = [];
    const buzzes: unknown[] = [];
    Object.assign(window, { tones, buzzes });
    navigator.vibrate = (pattern) => buzzes.push(pattern) > 0;
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
  await page.locator('.timer .start').click();
  await page.clock.runFor('31:00');
  await expect(said(page)).toHaveText(/can still burn/);
  // Told by the sound itself when each tone has been played.
  await expect.poll(tones).toEqual([660, 880]);
  const buzzes = () => page.evaluate(() => (window as unknown as { buzzes: unknown[] }).buzzes);
  expect(await buzzes(), 'a buzz for who cannot hear it').toHaveLength(1);
});

// What a stranger's link, or a link of another day, says of a wait: none of it shortens one.
test('no link ends a wait that this device has not counted', async ({ page }) => {
  await page.clock.install();
  await walkGuide(page, [...toWait]);
  const bare = page.url().replace(/&w=[^&]*/, '');
  const now = Math.floor((await page.evaluate(() => Date.now())) / 1000);
  const b36 = (seconds: number) => Math.floor(seconds).toString(36);
  const forged = [
    ...[
      'wait.1.1',
      'wait.1',
      'wait.1e9.1e9',
      'wait.%31.1',
      `wait.${b36(now)}.${b36(now)}`,
      `wait.${b36(now + 1)}.${b36(now)}`,
    ],
    ...[`wait.${b36(now + 60)}.${b36(now + 60)}`, `wait.${b36(now + 1)}.${b36(now - 3 * 3600)}`],
    ...[
      `wait.${b36(now - 1)}.${b36(now - 9)}`,
      `wait.${b36(now + 600)}`,
      `wait.${b36(now + 86000)}.${b36(now + 86000)}`,
    ],
  ];
  const unread = [
    ...[`wait.${'z'.repeat(20)}.1`, `wait.${'z'.repeat(220)}`, 'wait.-1.-1', 'wait.1.1.1', 'wait.'],
    ...['wait.Infinity.1', 'wait.NaN.NaN', 'other.1.1', 'wait.0.0'],
  ];
  for (const w of [...forged, ...unread]) {
    // A page of its own each, as a link that was sent opens.
    await page.goto('about:blank');
    await page.goto(`${bare}&w=${w}`);
    await page.clock.runFor(3000);
    await expect(said(page), w).not.toHaveText(/may have cooled/);
    const left = await soonest(page).textContent();
    const runs = await page.locator('.timer .clock').isVisible();
    if (runs) expect(left, w).toMatch(/^(30:00|29:5\d)$/);
    expect(left, w).not.toContain('NaN');
    if (unread.includes(w)) expect(runs, w).toBe(false);
  }
});

test('a wait goes on in a new tab by the journey kept on this device', async ({
  page,
  context,
}) => {
  await started(page);
  await page.clock.runFor('12:00');
  const kept = await page.evaluate(() => localStorage.getItem('hobnote.journey') ?? '');
  const address = new URL(kept.split(' ')[0] ?? '', page.url()).href;
  expect(address).toContain('w=wait.');
  await page.close();
  const again = await context.newPage();
  await again.goto(address);
  await expect(soonest(again)).not.toHaveText(/^(30:00|29:5\d|0:00)$/);
});
