// Whole journeys where tabs die, move back and forth, stand side by side, and requests are lost.
import type { BrowserContext, Page } from '@playwright/test';
import { formatJourney } from '../../src/address/journey-text.ts';
import { expect, siteUrl, test } from './support/fixtures.ts';
import { addressOf, codeFor, guide, made, shownCode, to } from './support/note.ts';
import { answerLink, walkGuide, giveAnswer } from './support/site.ts';

const note = to('stop-book');
const pathOf = (node: string) => `/${guide.id}/${node}/`;
const journeyIn = (page: Page) => formatJourney(addressOf(page).journey);

test.beforeEach(async ({ page }) => {
  expect(note.journey.length).toBeGreaterThan(4);
  await page.clock.setFixedTime(new Date(`${made}T18:00:00Z`));
});

test('a tab killed at any page of a journey is resumed where it was', async ({ page, context }) => {
  let tab = page;
  /** The tab dies without a word; a new one begins at the first page. */
  const kill = async (): Promise<void> => {
    const was = tab.url();
    await tab.close();
    tab = await context.newPage();
    await tab.goto('/');
    await tab.locator('.resume').click();
    await expect(tab).toHaveURL(was);
  };
  await tab.goto(pathOf(guide.start));
  for (const [index, { at, answer }] of note.journey.entries()) {
    await expect.poll(() => new URL(tab.url()).pathname).toBe(pathOf(at));
    await tab.waitForLoadState('domcontentloaded');
    if (index > 0) await kill();
    await expect(tab.locator('.lost')).toBeHidden();
    await giveAnswer(answerLink(tab, answer));
  }
  await expect.poll(() => journeyIn(tab)).toBe(formatJourney(note.journey));
  await tab.waitForLoadState('domcontentloaded');
  await kill();
  await tab.locator('[data-note]').click();
  expect(await shownCode(tab)).toBe(codeFor(note));
  await kill();
  expect(await shownCode(tab)).toBe(codeFor(note));
});

test('back to the first page and forward to the note, every page knows its journey', async ({
  page,
}) => {
  await walkGuide(
    page,
    note.journey.map(({ at, answer }) => [at, answer]),
  );
  const end = page.url();
  await page.locator('[data-note]').click();
  expect(await shownCode(page)).toBe(codeFor(note));
  await page.goBack();
  await expect(page).toHaveURL(end);
  for (let index = note.journey.length - 1; index >= 0; index -= 1) {
    await page.goBack();
    await expect(page).toHaveURL((url) => url.pathname === pathOf(note.journey[index]?.at ?? ''));
    expect(journeyIn(page)).toBe(formatJourney(note.journey.slice(0, index)));
    await expect(page.locator('.lost')).toBeHidden();
  }
  for (const _ of note.journey) await page.goForward();
  await expect(page).toHaveURL(end);
  await page.goForward();
  expect(await shownCode(page)).toBe(codeFor(note));
});

test('two tabs with two journeys never mix', async ({ page, context }) => {
  const other = to('stop-gas');
  const twin = await context.newPage();
  const walks = [
    { tab: page, note },
    { tab: twin, note: other },
  ];
  for (const { tab } of walks) await tab.goto(pathOf(guide.start));
  for (let step = 0; step < note.journey.length; step += 1)
    for (const { tab, note: own } of walks) {
      const given = own.journey[step];
      if (!given) continue;
      await giveAnswer(
        answerLink(tab, given.answer)
          .or(tab.locator(`main a[data-exit="${given.answer}"]`))
          .first(),
      );
      await expect.poll(() => journeyIn(tab)).toBe(formatJourney(own.journey.slice(0, step + 1)));
    }
  for (const { tab } of walks) await tab.locator('[data-note]').click();
  for (const { tab, note: own } of walks) expect(await shownCode(tab)).toBe(codeFor(own));
  // A remark in the one tab is not in the other.
  await page.getByLabel('Anything else?').fill('mine');
  await twin.reload();
  await expect(twin.getByLabel('Anything else?')).toHaveValue('');
});

test('with storage full the journey and the note go on, and nothing written is lost', async ({
  page,
}) => {
  await page.goto('/about/');
  await page.evaluate(() => {
    for (const store of [localStorage, sessionStorage])
      for (let size = 1 << 22; size >= 1; size >>= 1)
        for (let index = 0; index < 8; index += 1)
          try {
            store.setItem(`full ${String(size)} ${String(index)}`, 'x'.repeat(size));
          } catch {
            break;
          }
  });
  await walkGuide(
    page,
    note.journey.map(({ at, answer }) => [at, answer]),
  );
  expect(await page.evaluate(() => localStorage.getItem('hobnote.journey'))).toBeNull();
  await page.locator('[data-note]').click();
  await expect(page.locator('.more')).toContainText('shows in the web address');
  await page.getByLabel('Anything else?').fill('a remark');
  await expect.poll(() => addressOf(page).remark).toBe('a remark');
  await page.reload();
  await expect(page.getByLabel('Anything else?')).toHaveValue('a remark');
  expect(await shownCode(page)).toBe(codeFor(note));
});

test.describe('one request of a first visit lost', () => {
  /** Paths a page asks for. */
  async function asked(context: BrowserContext, path: string): Promise<string[]> {
    const page = await context.newPage();
    const paths = new Set<string>();
    page.on('request', (request) => paths.add(new URL(request.url()).pathname));
    await page.goto(path);
    const last = path.startsWith('/note/') ? '.qr svg' : '.answers a';
    await expect(page.locator(last).first()).toBeVisible();
    await page.close();
    return [...paths];
  }

  for (const [what, path] of [
    ['a question', pathOf('danger')],
    ['the note', `/note/#j=${formatJourney(note.journey)}&on=${made}`],
  ] as const)
    test(`${what}: the page works, or says what to do`, async ({ browser, context }) => {
      const paths = await asked(context, path);
      expect(paths.length).toBeGreaterThan(5);
      await Promise.all(
        paths.map(async (lost) => {
          // A context of its own each: not watched, since what is lost is told there.
          const visit = await browser.newContext({ baseURL: siteUrl(), serviceWorkers: 'block' });
          const page = await visit.newPage();
          const crashes: string[] = [];
          page.on('pageerror', ({ message }) => crashes.push(message));
          await page.route(
            (url) => url.pathname === lost,
            (route) => route.abort(),
            { times: 1 },
          );
          const came = await page.goto(path).catch(() => undefined);
          // The page itself lost is the browser's to tell; loading it again gets it.
          if (!came) await expect(() => page.goto(path)).toPass();
          await expect(page.locator('h1'), lost).toBeVisible();
          if (path.startsWith('/note/'))
            await expect(
              page.locator('#note :is(.code-card, .late, button:text("Try again"))').first(),
              lost,
            ).toBeVisible();
          else {
            await giveAnswer(answerLink(page, 'none'));
            await expect(page, lost).toHaveURL((url) => url.pathname === pathOf('since'));
            await expect(answerLink(page, 'over-4'), lost).toBeVisible();
          }
          expect(crashes, lost).toEqual([]);
          await visit.close();
        }),
      );
    });
});
