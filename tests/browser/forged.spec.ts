// What an address alone claims: links that skip questions, and journeys that have grown old.
import { expect, test } from './support/fixtures.ts';
import { toWait } from './support/codes.ts';
import { answerLink, giveAnswer, walkGuide } from './support/site.ts';

const HEATS = '/door-locked/short-clean/';
const forged = [
  '#j=last-gate.all-true',
  '#g=door-locked&j=danger.none~last-gate.all-true',
  '#g=door-locked&j=danger.fire~last-gate.all-true',
  '#g=error-shows&j=danger.none~door-locked/last-gate.all-true',
];

test('a link that skips questions shows no step that heats, and takes the place of no journey', async ({
  page,
}) => {
  await walkGuide(page, [...toWait]);
  await page.waitForURL('**/wait/**');
  const kept = () => page.evaluate(() => localStorage.getItem('hobnote.journey'));
  await expect.poll(kept).toContain('/wait/');
  const before = await kept();
  for (const hash of forged) {
    await page.goto(`${HEATS}${hash}`);
    await page.reload();
    const lost = page.locator('.lost');
    await expect(lost, hash).toBeVisible();
    expect((await lost.boundingBox())?.y ?? 999, 'at the top of the screen').toBeLessThan(200);
    await expect(page.locator('.page .lines')).toBeHidden();
    await expect(page.locator('.page .answers')).toBeHidden();
    await lost.getByRole('link').focus();
    expect(await kept(), hash).toBe(before);
  }
  await page.locator('.lost').getByRole('link').click();
  await page.waitForURL('**/door-locked/danger/');
});

test('a true journey gets there, by answers and by its address', async ({ page }) => {
  const way = [
    ...'danger.none since.overnight display.time off-once.same controls.buttons'.split(' '),
    ...'try-door.stuck panel.ready'.split(' '),
  ].join('~');
  await page.goto(`/door-locked/breaker-off/#g=door-locked&j=${way}`);
  await expect(page.locator('.page .lines')).toBeVisible();
  await expect(page.locator('.lost')).toBeHidden();
  await giveAnswer(answerLink(page, 'done'));
  await page.waitForURL('**/breaker-on/**');
});

test.describe('with scripts off', () => {
  test.use({ javaScriptEnabled: false });
  test('such a page asks in words whether its reader came through the questions', async ({
    page,
  }) => {
    await page.goto(HEATS);
    await expect(page.locator('.lost')).toHaveText(/through the questions/);
    await expect(page.locator('.lost')).toBeVisible();
  });
});

test('only the beginnings of guides may be found by search engines', async ({ page }) => {
  const robots = page.locator('meta[name="robots"]');
  await page.goto('/door-locked/danger/');
  await expect(robots).toHaveCount(0);
  await page.goto('/door-locked/since/');
  await expect(robots).toHaveAttribute('content', 'noindex');
});

test('a journey of hours ago asks about danger first, one of yesterday leads to its note only', async ({
  page,
}) => {
  await page.clock.install({ time: new Date('2026-11-24T10:00:00-06:00') });
  await walkGuide(page, [...toWait]);
  await page.waitForURL('**/wait/**');
  const resume = page.locator('.resume');
  await page.goto('/');
  await expect(resume).toHaveAttribute('href', /\/door-locked\/wait\//);
  await resume.click();
  await page.waitForURL('**/door-locked/wait/**');
  await page.clock.setFixedTime(new Date('2026-11-24T16:00:00-06:00'));
  await page.goto('/');
  await resume.click();
  await expect(page.locator('.kept [data-tell]')).toContainText('If there is any danger now');
  await resume.click();
  await page.waitForURL('**/door-locked/wait/**');
  await page.clock.setFixedTime(new Date('2026-11-25T17:00:00-06:00'));
  await page.goto('/');
  await expect(resume).toContainText('Your answers of Tuesday, November 24, 2026');
  await resume.click();
  await page.waitForURL(/\/note\/#.*on=2026-11-24/);
});
