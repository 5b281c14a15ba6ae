// The guides by taps: whole journeys, and what a reader does on the way.
import { parseId } from '../../src/guide/ids.ts';
import { formatJourney } from '../../src/address/journey-text.ts';
import type { Guide, Journey, NodeId } from '../../src/guide/types.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { toWait } from './support/codes.ts';
import { answerLink, giveAnswer, walkGuide } from './support/site.ts';
import { guides, shortestJourneys } from './support/shortest-journeys.ts';

const journeyOf = (hash: string) => new URLSearchParams(hash.slice(1)).get('j');

/** Of a guide: the farthest end that another guide holds, where there is one; else of its own. */
function farEnd(guide: Guide): readonly [NodeId, Journey] {
  const ways = shortestJourneys(guide);
  const length = (id: NodeId) => ways.get(id)?.length ?? 0;
  const over = (id: NodeId) => Number(parseId(id).guide !== undefined);
  const [end = guide.start] = [...ways.keys()]
    .filter((id) => guide.nodes.get(id)?.answers.length === 0)
    .toSorted((a, b) => over(b) - over(a) || length(b) - length(a));
  return [end, ways.get(end) ?? []];
}

// Every single answer's link is held by sweep.spec, and by tests/built for scripts off; here whole
// ways are gone. Without scripts one way is enough: there a page knows nothing of the others.
for (const javaScriptEnabled of [true, false])
  test.describe(`scripts ${javaScriptEnabled ? 'on' : 'off'}`, () => {
    test.use({ javaScriptEnabled });
    for (const guide of javaScriptEnabled ? guides : guides.slice(0, 1))
      test(`${guide.id}: its farthest end is reached by taps, the journey riding along`, async ({
        page,
      }) => {
        const [end, journey] = farEnd(guide);
        await walkGuide(
          page,
          journey.map(({ at, answer }) => [at, answer]),
          guide.id,
        );
        const { guide: of = guide.id, name } = parseId(end);
        expect(new URL(page.url()).pathname).toBe(`/${of}/${name}/`);
        await expect(page.locator('h1')).toBeVisible();
        await expect(page.locator('.lost')).toBeHidden();
        const hash = new URLSearchParams(new URL(page.url()).hash.slice(1));
        // Where the address names no guide, the journey began in the page's own.
        expect([hash.get('j'), hash.get('g') ?? of]).toEqual(
          javaScriptEnabled ? [formatJourney(journey), guide.id] : [null, of],
        );
      });
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
  await giveAnswer(answerLink(page, 'none'));
  await page.waitForURL('**/doing/**');
  await page.goto('/error-shows/door-stuck/#a=error-write.written');
  await expect(page.locator('.lost')).toBeVisible();
});
