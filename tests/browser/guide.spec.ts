import { formatJourney } from '../../src/address/journey-text.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import type { NodeId } from '../../src/guide/types.ts';
import { noSidewaysScroll, targetsAtLeast, textSize } from './support/layout.ts';
import { tabOrder } from './support/keyboard.ts';
import { toWait } from './support/codes.ts';
import { answerLink, walkGuide } from './support/site.ts';
import { doorLocked, shortestWays } from './support/ways.ts';

const guide = doorLocked();
const ways = shortestWays(guide);
const ends = [...guide.nodes.values()].filter(({ answers }) => answers.length === 0);
const journeyOf = (hash: string) => new URLSearchParams(hash.slice(1)).get('j');

test('a homeowner reaches every ending by taps, and the journey rides along', async ({
  page,
  isMobile,
}) => {
  test.skip(!isMobile, 'the way is the same on every screen');
  test.setTimeout(400_000);
  expect(ends.length).toBeGreaterThan(15);
  for (const end of ends) {
    const journey = ways.get(end.id);
    if (!journey) throw new Error(`no way to ${end.id}`);
    await walkGuide(
      page,
      journey.map(({ at, answer }) => [at, answer]),
    );
    await expect(page).toHaveURL((url) => url.pathname.endsWith(`/${end.id}/`));
    expect(journeyOf(new URL(page.url()).hash)).toBe(formatJourney(journey));
    await expect(page.locator('.lost')).toBeHidden();
    const note = await page.locator('[data-note]').getAttribute('href');
    expect(journeyOf(new URL(note ?? '', page.url()).hash)).toBe(formatJourney(journey));
  }
});

test.describe('with scripts off', () => {
  test.use({ javaScriptEnabled: false });
  test('every ending is reached by plain links', async ({ page, isMobile }) => {
    test.skip(!isMobile, 'the way is the same on every screen');
    test.setTimeout(400_000);
    expect(ends.length).toBeGreaterThan(15);
    for (const end of ends) {
      const journey = ways.get(end.id) ?? [];
      await walkGuide(
        page,
        journey.map(({ at, answer }) => [at, answer]),
      );
      expect(new URL(page.url()).pathname).toBe(`/door-locked/${end.id}/`);
      await expect(page.locator('h1')).toBeVisible();
    }
  });
});

test('every emergency stop shows the emergency number before all other numbers', async ({
  page,
}) => {
  const stops = ends.filter(({ urgency }) => urgency === 'emergency');
  expect(stops.length).toBeGreaterThan(6);
  for (const stop of stops) {
    await page.goto(`/door-locked/${stop.id}/`);
    await expect(page.locator('.calls a').first()).toHaveAttribute('href', 'tel:911');
    await expect(page.locator('.care li').first()).toBeVisible();
  }
});

test('the danger list is one tap away and keeps the answers given', async ({ page }) => {
  await walkGuide(page, [...toWait]);
  await page.locator('.danger-list summary').click();
  await page.locator('[data-exit="sparks"]').click();
  await expect(page).toHaveURL(/stop-electric/);
  expect(journeyOf(new URL(page.url()).hash)).toMatch(/near\.warm~wait\.sparks$/);
  await axe(page);
});

test('a page reached without a journey opens the danger list and asks to start over', async ({
  page,
}) => {
  for (const hash of ['', '#j=danger.fire', '#j=%3Cscript%3E', `#j=${'a.b~'.repeat(900)}`]) {
    await page.goto(`/door-locked/breaker-off/${hash}`);
    await page.reload();
    await expect(page.locator('.lost')).toBeVisible();
    await expect(page.locator('.danger-list')).toHaveAttribute('open', '');
    await expect(page.locator('[data-exit="fire"]')).toBeVisible();
  }
  await axe(page);
});

test('Back leads to the question before, and the answer can be changed', async ({ page }) => {
  await walkGuide(page, [...toWait]);
  await page.locator('.back').click();
  await expect(page).toHaveURL(/\/near\//);
  await answerLink(page, 'cool').click();
  await expect(page).toHaveURL(/\/inside\//);
  expect(journeyOf(new URL(page.url()).hash)).toMatch(/near\.cool$/);
});

test('the count-down survives a reload, and tells its end in words', async ({ page }) => {
  await page.clock.install();
  await walkGuide(page, [...toWait]);
  await page.locator('.timer .start').click();
  // Less than an hour since the heat stopped: 30 minutes to 4 hours are counted in full.
  await expect(page.locator('[data-left="earliest"]')).toHaveText(/^(30:00|29:59)$/);
  await expect(page.locator('[data-left="latest"]')).toHaveText(/^(4:00:00|3:59:59)$/);
  await axe(page);
  await page.clock.fastForward('10:00');
  await page.reload();
  await expect(page.locator('[data-left="earliest"]')).toHaveText(/^(20:00|19:\d\d)$/);
  // A tab closed and opened again resumes from the first page.
  await page.goto('/');
  await page.locator('.resume').click();
  await expect(page.locator('[data-left="earliest"]')).toHaveText(/^(20:00|19:\d\d)$/);
  await page.clock.fastForward('21:00');
  await expect(page.locator('.timer .said')).toHaveText(/can still burn you/);
  await expect(page.locator('body')).not.toContainText(/safe to touch/i);
  await axe(page);
});

test('the display’s text is kept as typed, whatever it holds', async ({ page }) => {
  await walkGuide(page, [
    ['danger', 'none'],
    ['doing', 'ended'],
    ['display', 'error'],
  ]);
  const hostile = '<b>F9 \u202eE1';
  await page.getByLabel('What the display shows').fill(hostile);
  await axe(page);
  await answerLink(page, 'written').click();
  await expect(page).toHaveURL(/since-cold/);
  expect(new URLSearchParams(new URL(page.url()).hash.slice(1)).get('e')).toBe(hostile);
  await page.locator('.back').click();
  await expect(page.getByLabel('What the display shows')).toHaveValue(hostile);
});

test('the first page goes on where the reader left off, and sets a broken copy aside', async ({
  page,
}) => {
  await walkGuide(page, [...toWait]);
  await expect(page).toHaveURL(/\/wait\//);
  await page.goto('/');
  await page.locator('.resume').click();
  await expect(page).toHaveURL(/\/wait\//);
  for (const broken of [
    '{',
    'javascript:alert(1)',
    'https://elsewhere.example/#j=danger.none',
    '/#j=',
  ]) {
    await page.evaluate((text) => localStorage.setItem('hobnote.journey', text), broken);
    await page.goto('/about/');
    await page.goto('/');
    await expect(page.locator('.resume')).toBeHidden();
    expect(await page.evaluate(() => localStorage.getItem('hobnote.journey.broken'))).toBe(broken);
  }
});

test('with storage blocked the journey goes on', async ({ page }) => {
  await page.addInitScript(() =>
    Object.defineProperty(window, 'localStorage', {
      get() {
        throw new DOMException('blocked', 'SecurityError');
      },
    }),
  );
  await walkGuide(page, [...toWait]);
  expect(journeyOf(new URL(page.url()).hash)).toMatch(/near\.warm$/);
});

test('the keyboard alone leads through a question', async ({ page }) => {
  await page.goto('/door-locked/danger/');
  const stops = await tabOrder(page);
  for (const stop of stops) expect(stop.ring, `${stop.name} shows its focus`).toBe(true);
  expect(stops.map(({ name }) => name)).toContain('None of these');
  await answerLink(page, 'none').focus();
  await page.keyboard.press('Enter');
  await expect(page).toHaveURL(/\/doing\//);
});

/** One page of each text: the copies of a page on other tracks differ only in their links. */
function pagesOfEachText(): string[] {
  const first = new Map<string, NodeId>();
  for (const { id, sentences: text } of guide.nodes.values())
    if (!first.has(text)) first.set(text, id);
  return [...first.values()].map(
    (id) => `/door-locked/${id}/#j=${formatJourney(ways.get(id) ?? [])}`,
  );
}

test('every page of the guide is accessible', async ({ page }) => {
  test.setTimeout(600_000);
  const pages = pagesOfEachText();
  expect(pages.length).toBeGreaterThan(45);
  for (const path of [...pages, '/', '/about/', '/404.html']) {
    await page.goto(path);
    await expect(page.locator('.lost:not([hidden])')).toHaveCount(0);
    await axe(page);
    if (path.includes('/door-locked/')) await targetsAtLeast(page, 'main a:visible, summary');
  }
});

test.describe('in the dark theme', () => {
  test.use({ colorScheme: 'dark' });
  test('each kind of page and each signal word is accessible', async ({ page, isMobile }) => {
    test.skip(!isMobile, 'colours are the same on every screen');
    test.setTimeout(200_000);
    const shown = new Map(
      [...guide.nodes.values()].map((node) => [`${node.kind} ${node.care ?? ''}`, node.id]),
    );
    expect(shown.size).toBeGreaterThan(8);
    for (const id of shown.values()) {
      await page.goto(`/door-locked/${id}/#j=${formatJourney(ways.get(id) ?? [])}`);
      await axe(page);
    }
    await page.goto('/');
    await axe(page);
  });
});

test('every page fits 320 pixels, at normal and at double text size', async ({
  page,
  isMobile,
}) => {
  test.skip(!isMobile, 'the width is set here, the same for every screen');
  test.setTimeout(300_000);
  const pages = pagesOfEachText();
  expect(pages.length).toBeGreaterThan(45);
  await page.setViewportSize({ width: 320, height: 640 });
  for (const path of [...pages, '/', '/about/', '/404.html']) {
    await page.goto(path);
    await noSidewaysScroll(page);
    await textSize(page, 200);
    await noSidewaysScroll(page);
  }
});

test('taps that come before a page’s script has run lose nothing of the journey', async ({
  page,
  watched,
}) => {
  watched.expect(/request failed .*\.js/);
  watched.expect(/console error .*ERR_FAILED/);
  const scripts = '**/_astro/*.js';
  const tapEarly = async (answer: string) => {
    await page.route(scripts, (route) => route.abort());
    await page.reload();
    await answerLink(page, answer).click({ noWaitAfter: true });
    await page.unroute(scripts);
  };
  const journey = () => new URLSearchParams(new URL(page.url()).hash.slice(1)).get('j');
  // The first question, one in the middle, and one that leads into another guide.
  await page.goto('/error-shows/danger/');
  await tapEarly('none');
  await page.waitForURL('**/error-shows/what/**');
  await page.reload();
  expect(journey()).toBe('danger.none');
  await expect(page.locator('.lost')).toBeHidden();
  await answerLink(page, 'error').click();
  await page.waitForURL('**/error-write/**');
  await tapEarly('written');
  await page.waitForURL('**/door-stuck/**');
  await page.reload();
  await expect.poll(journey).toBe('danger.none~what.error~error-write.written');
  await tapEarly('yes');
  await page.waitForURL('**/door-locked/since-cold/**');
  await page.reload();
  await expect(page.locator('.lost')).toBeHidden();
  expect(journey()).toBe('danger.none~what.error~error-write.written~door-stuck.yes');
});

test('an early tap with another journey kept says to start at the beginning', async ({ page }) => {
  await page.goto('/door-locked/danger/');
  await answerLink(page, 'none').click();
  await page.waitForURL('**/doing/**');
  await page.goto('/error-shows/door-stuck/#a=error-write.written');
  await expect(page.locator('.lost')).toBeVisible();
});
