import type { Page } from '@playwright/test';
import type { Journey } from '../../../src/guide/types.ts';
import { formatFragment, type Fragment } from '../../../src/address/fragment.ts';
import { parseJourney } from '../../../src/address/journey-text.ts';
import { answerKeys } from '../../../src/app/desk/keys.ts';
import { mainLanguage } from '../../../src/content/load.ts';
import { expect } from './fixtures.ts';
import { guide } from './note.ts';
import { rootOf } from './pages.ts';

/** A long call: the demo's latch that hums on and on, 12 answers. */
export const HUM = parseJourney(
  'danger.none~since.over-4~near.quiet~display.lock~control-lock.no-change~off-once.same~controls.buttons~try-door.stuck~panel.ready~breaker-off.done~breaker-on.stayed~listen.hum-on',
);

/** Opens the desk at the locked door: a new call chooses it first where there is a choice. */
export const openDesk = async (
  page: Page,
  fragment: Partial<Fragment> = {},
  language = mainLanguage(),
) => {
  const hash = formatFragment({ journey: [], details: {}, ...fragment });
  await page.goto(`${rootOf(language)}desk/${hash && `#${hash}`}`);
  await expect(page.locator('#desk-say')).toBeVisible();
  await seen(page);
  if (await page.locator('.choose').isVisible())
    await page.locator('.choose .choices button').first().click();
  await expect(page.locator('.bar-call')).toBeVisible();
};

/** The key of an answer: 1 and up in the guide's order, - behind 9, 0 for "not sure". */
export function keyOf(at: string, answer: string): string {
  if (answer === 'unsure') return '0';
  const own = guide.nodes.get(at as never)?.answers.filter(({ id }) => id !== 'unsure') ?? [];
  const index = own.findIndex(({ id }) => id === answer);
  expect(index, `${at} has ${answer}`).toBeGreaterThanOrEqual(0);
  expect(answerKeys.length, `${at}.${answer} has a key`).toBeGreaterThan(index);
  return answerKeys[index] ?? '';
}

export const say = (page: Page) => page.locator('#desk-say');
export const status = (page: Page) => page.locator('#desk-status');
export const rows = (page: Page) => page.locator('.journey li button:not(.here)');

/** Waits until what is asked has been on the screen, so that a key counts. */
export const seen = (page: Page) => page.locator('.desk[data-seen]').waitFor();

/** Presses a key once it counts. */
export const press = async (page: Page, key: string) => {
  await seen(page);
  await page.keyboard.press(key);
};

/** Taps an answer once it counts. */
export const choose = async (page: Page, answer: string) => {
  await seen(page);
  await page.locator('.choices').getByRole('button', { name: answer }).first().click();
};

/** Presses keys one by one and counts them. */
export class Counted {
  presses = 0;
  readonly #page: Page;
  constructor(page: Page) {
    this.#page = page;
  }
  async press(...keys: readonly string[]): Promise<void> {
    for (const key of keys) {
      this.presses += 1;
      await press(this.#page, key);
    }
  }
  async type(text: string): Promise<void> {
    this.presses += [...text].length;
    await this.#page.keyboard.type(text);
  }
  /** Ticks what must be read out first, then answers. */
  async answer(journey: Journey): Promise<void> {
    for (const { at, answer } of journey) {
      await seen(this.#page);
      if (await this.#page.locator('.middle .care .tick').isVisible()) await this.press('Space');
      const last = this.#page.locator('.conditions input').last();
      const needs = answer === 'ready' || answer === 'all-true';
      while (needs && (await last.isVisible()) && !(await last.isChecked()))
        await this.press('Space');
      await this.press(keyOf(at, answer));
    }
  }
}
