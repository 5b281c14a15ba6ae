import { AxeBuilder } from '@axe-core/playwright';
import { expect, type Page } from '@playwright/test';

/** WCAG 2.2 levels A and AA in axe-core's words, and what it holds to be good practice. */
const TAGS = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** Stricter than AA and off by default: contrast of 7:1 (1.4.6), targets of 24 px (2.5.8). */
const ALSO = { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } };

/**
 * Asserts that axe-core finds nothing on the page in the state it is in.
 *
 * @param without rules left out, each with the reason why
 */
export async function axe(page: Page, without: Record<string, string> = {}): Promise<void> {
  const { violations, passes } = await new AxeBuilder({ page })
    .options({
      runOnly: { type: 'tag', values: TAGS },
      rules: {
        ...ALSO,
        ...Object.fromEntries(Object.keys(without).map((rule) => [rule, { enabled: false }])),
      },
    })
    .analyze();
  const found = violations.flatMap(({ id, impact, help, nodes }) =>
    nodes.map(
      ({ target, html, failureSummary }) =>
        `${id} (${impact ?? 'unknown'}): ${help}\n  at ${target.join(' ')}\n  ${html}\n  ${failureSummary ?? ''}`,
    ),
  );
  expect(passes.length, 'axe had something to check').toBeGreaterThan(0);
  expect(found.join('\n\n'), `axe on ${page.url()}`).toBe('');
}
