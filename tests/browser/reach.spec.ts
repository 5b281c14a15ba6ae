// From the first page to the note by taps alone, and by two switches alone at any pace.
import type { Locator, Page } from '@playwright/test';
import { languages, mainLanguage } from '../../src/content/load.ts';
import { codeFor, shownCode, to } from './support/note.ts';
import { expect, test } from './support/fixtures.ts';
import { rootOf } from './support/pages.ts';
import { places } from './support/places.ts';
import { answerLink, giveAnswer } from './support/site.ts';
import { toWait } from './support/codes.ts';

const stop = to('stop-book');
const other = languages().at(-1) ?? '';

/** Gives the answers of a journey, each by `use`, and waits for the page after it. */
async function follow(
  page: Page,
  journey: readonly (readonly [at: string, answer: string])[],
  use: (control: Locator) => Promise<unknown>,
): Promise<void> {
  expect(journey.length).toBeGreaterThan(2);
  for (const [at, answer] of journey) {
    const here = new RegExp(`/${at}/`);
    await expect(page).toHaveURL(here);
    // The script has run: the answer carries the journey.
    await expect(answerLink(page, answer)).toHaveAttribute('href', /j=/);
    await giveAnswer(answerLink(page, answer), use);
    const gone = () => expect(page).not.toHaveURL(here, { timeout: 10_000 });
    // Two taps that a busy machine runs together count as one: a reader taps again.
    await gone().catch(async () => {
      await use(answerLink(page, answer));
      await gone();
    });
  }
}
/** A finger that comes again after a look: two taps at once are a double tap, which is one. */
const tap = async (control: Locator): Promise<void> => {
  if ((await control.getAttribute('data-armed')) !== null) await control.page().waitForTimeout(600);
  await control.tap();
};
const toStop = stop.journey.map(({ at, answer }) => [at, answer] as const);

test.describe('by taps alone', () => {
  for (const language of new Set([mainLanguage(), other]))
    test(`${language}: from the first page to the note code, shown large and away again`, async ({
      page,
    }) => {
      await page.goto(rootOf(language));
      await page.tap('.button.start');
      await follow(page, toStop, tap);
      await page.tap('[data-note]');
      const { made: day, ...asked } = stop;
      expect(await shownCode(page)).toHaveLength(codeFor({ made: day ?? '', ...asked }).length);
      await page.locator('.pass button:has(+ dialog)').tap();
      await expect(page.locator('dialog.large')).toBeVisible();
      await page.locator('dialog.large > button').tap();
      await expect(page.locator('dialog.large')).toBeHidden();
    });

  // WCAG 2.5.7: what is dragged has buttons beside it.
  test('a visit of the round is moved without dragging', async ({ page }) => {
    const round = places.find(({ kind }) => kind === 'round');
    await round?.open(page, mainLanguage());
    const order = () => page.locator('.visit h3').allTextContents();
    const [first, second, third] = await order();
    await page.locator('.visit .down').first().tap();
    expect(await order()).toEqual([second, first, third]);
    await page.locator('.visit .up').nth(2).tap();
    expect(await order()).toEqual([second, third, first]);
  });
});

/** Two switches: one goes on to the next control, one presses it. Counts what is pressed. */
class Switches {
  presses = 0;
  readonly #page: Page;
  constructor(page: Page) {
    this.#page = page;
  }
  async #press(key: 'Tab' | 'Enter' | 'Space'): Promise<void> {
    this.presses += 1;
    await this.#page.keyboard.press(key);
  }
  /** Steps on until the control has the focus, through the page once at the most. */
  async stepTo(control: Locator): Promise<void> {
    const focused = () => control.evaluate((element) => element === document.activeElement);
    for (let steps = 0; !(await focused()); steps += 1) {
      expect(steps, 'steps to a control').toBeLessThan(80);
      await this.#press('Tab');
    }
  }
  async use(control: Locator, key: 'Enter' | 'Space' = 'Enter'): Promise<void> {
    await this.stepTo(control);
    await this.#press(key);
  }
}

/** Lets hours pass, and asserts that nothing moved: neither page nor focus nor place (WCAG 2.2.3). */
async function pause(page: Page, time: string): Promise<void> {
  const look = () =>
    page.evaluate(() => ({
      url: location.pathname,
      focus: [...document.querySelectorAll('*')].indexOf(document.activeElement ?? document.body),
      place: scrollY,
      title: document.querySelector('h1')?.textContent,
    }));
  const before = await look();
  await page.clock.fastForward(time);
  expect(await look(), `after ${time}`).toEqual(before);
}

test.describe('by two switches alone', () => {
  for (const language of new Set([mainLanguage(), other]))
    test(`${language}: to the note, at any pace`, async ({ page }) => {
      await page.clock.install();
      const switches = new Switches(page);
      await page.goto(rootOf(language));
      await switches.use(page.locator('.button.start'));
      await follow(page, toStop, async (control) => {
        await switches.stepTo(control);
        await pause(page, '03:00:00');
        await switches.use(control);
      });
      await switches.use(page.locator('[data-note]'));
      await shownCode(page);
      const large = page.locator('.pass button:has(+ dialog)');
      await switches.stepTo(large);
      await pause(page, '03:00:00');
      await switches.use(large, 'Space');
      const close = page.locator('dialog.large > button');
      await switches.use(close, 'Space');
      await expect(large).toBeFocused();
      test.info().annotations.push({ type: 'presses', description: String(switches.presses) });
      expect(switches.presses).toBeGreaterThan(toStop.length);
    });

  test('a wait runs out, and the reader stays where they are until they go on', async ({
    page,
  }) => {
    await page.clock.install();
    const switches = new Switches(page);
    await page.goto('/door-locked/danger/');
    await follow(page, toWait, (control) => switches.use(control));
    const start = page.locator('.timer .start');
    await switches.use(start);
    await expect(page.locator('[data-left="earliest"]')).toHaveText(/^(30:00|29:5\d)$/);
    await page.clock.runFor('20:00');
    await expect(start).toBeFocused();
    await page.clock.runFor('11:00');
    await expect(page.locator('.timer .said')).toHaveText(/can still burn/);
    await expect(start).toBeFocused();
    // Past the longest time too, with the focus on an answer.
    const answer = answerLink(page, 'cool').or(page.locator('.answers a')).first();
    await switches.stepTo(answer);
    await page.clock.runFor('05:00:00');
    await pause(page, '08:00:00');
    await expect(answer).toBeFocused();
    await switches.use(answer);
    await expect(page).not.toHaveURL(/\/wait\//);
  });
});
