/** A whole journey as a screen reader says it, by @guidepup/virtual-screen-reader, which follows ARIA in the page. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import type { Browser } from '@playwright/test';
import { guides, languages, localeOf, study } from '../../src/content/load.ts';
import { rootOf } from '../browser/support/pages.ts';

const fileOf = (language: string): URL => new URL(`spoken/${language}.txt`, import.meta.url);
/** The task of the study that waits for the morning: a question, a wait and an end. */
const END = 'finish-overnight';
/** No page says more: a guard against a reader that goes in circles. */
const MOST = 600;

const reader = readFileSync(
  new URL('node_modules/@guidepup/virtual-screen-reader/lib/esm/index.browser.js', import.meta.url),
).toString('base64');

/** What is said from the top of a part of the page to its end, as a function of its selector. */
const say = (selector: string): string => `(async () => {
  const { virtual } = await import('data:text/javascript;base64,${reader}');
  // Nothing of these is shown where scripts run, nor of a list that is shut; the reader does not know that.
  document.querySelectorAll('noscript, details:not([open]) > :not(summary)').forEach((one) => one.remove());
  await virtual.start({ container: document.querySelector('${selector}') });
  const first = await virtual.lastSpokenPhrase();
  for (let step = 0; step < ${String(MOST)}; step += 1) {
    await virtual.next();
    if ((await virtual.lastSpokenPhrase()) === first) break;
  }
  const said = (await virtual.spokenPhraseLog()).slice(0, -1);
  await virtual.stop();
  return said;
})()`;

/** The journey by taps from the danger question to its note; the frame around the pages is said once. */
async function spoken(browser: Browser, url: string, language: string): Promise<string> {
  const task = study().find(({ end }) => end === END);
  const guide = guides().find(({ id }) => String(id) === task?.guide);
  if (!task || !guide) throw new Error(`no task ends at ${END}`);
  const context = await browser.newContext({
    ...{ bypassCSP: true, serviceWorkers: 'block', timezoneId: 'America/Chicago' },
    locale: localeOf(language),
    viewport: { width: 360, height: 740 },
  });
  const page = await context.newPage();
  // What is said must not hang on the day.
  await page.clock.setFixedTime(new Date('2026-01-15T15:00:00Z'));
  await page.goto(new URL(`.${rootOf(language)}${guide.id}/${guide.start}/`, url).href);
  const pages = [await page.evaluate<string[]>(say('body'))];
  for (const step of task.way.split(' ')) {
    const answer = page.locator(`main a[data-answer="${step.split('.')[1] ?? ''}"]`);
    const before = page.url();
    await answer.click();
    // An answer that a slip must not give asks for a second tap.
    if (step === 'danger.none') await answer.click();
    await page.waitForURL((to) => to.href.split('#')[0] !== before.split('#')[0]);
    pages.push(await page.evaluate<string[]>(say('main')));
  }
  await page.locator('main [data-note]').first().click();
  await page.locator('main .groups').first().waitFor();
  pages.push(await page.evaluate<string[]>(say('main')));
  await context.close();
  return `${pages.map((said) => said.join('\n')).join('\n\n')}\n`;
}

/**
 * The languages in which the journey is said otherwise than `spoken/<language>.txt` has it; with `update`,
 * or where there is no such file, it is written.
 */
export async function spokenOtherwise(
  browser: Browser,
  url: string,
  update: boolean,
): Promise<readonly string[]> {
  const otherwise: string[] = [];
  for (const language of languages()) {
    const file = fileOf(language);
    const said = await spoken(browser, url, language);
    if (update || !existsSync(file)) writeFileSync(file, said);
    if (readFileSync(file, 'utf8') !== said) otherwise.push(language);
  }
  return otherwise;
}
