import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import AxeBuilder from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** WCAG 2.2 levels A and AA in axe-core's words, and what it holds to be good practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];
const COLORS = ['color-contrast', 'color-contrast-enhanced', 'link-in-text-block'];

/** Stricter than AA and off by default: contrast of 7:1 (1.4.6), targets of 24 px (2.5.8). */
const RULES = { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } };

/** axe-core itself, which the builder would put into a page anew, twice, each time it looks. */
const SOURCE = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe-core finds wrong on the page in the state it is in, in words. */
export async function axeFaults(page: Page, only?: 'colors'): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(SOURCE);
  // Legacy mode: no second page is opened for the results, which is for frames of other origins.
  const { violations, passes } = await new AxeBuilder({ page, axeSource: ';' })
    .setLegacyMode()
    .options({
      // With rules of its own besides, a tag alone would leave out those that are off by default.
      ...(only === undefined
        ? { runOnly: { type: 'tag', values: TAGS }, rules: RULES }
        : { runOnly: COLORS }),
      preload: false,
      // Of what passes one place each: to tell them all takes longer than the rest.
      resultTypes: ['violations'],
    })
    .analyze();
  expect(passes.length, 'axe had something to check').toBeGreaterThan(0);
  return violations.flatMap(({ id, impact, help, nodes }) =>
    nodes.map(
      ({ target, html, failureSummary }) =>
        `${id} (${impact ?? 'unknown'}): ${help}\n  at ${target.join(' ')}\n  ${html}\n  ${failureSummary ?? ''}`,
    ),
  );
}

/** Asserts that axe-core finds nothing on the page in the state it is in. */
export async function axe(page: Page): Promise<void> {
  expect((await axeFaults(page)).join('\n\n'), `axe on ${page.url()}`).toBe('');
}
