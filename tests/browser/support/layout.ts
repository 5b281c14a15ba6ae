import { expect, type Page } from '@playwright/test';

/** Asserts that the page is no wider than its window, naming what sticks out (WCAG 1.4.10). */
export async function noSidewaysScroll(page: Page): Promise<void> {
  const width = page.viewportSize()?.width;
  if (width === undefined) throw new Error('the page has no fixed window size');
  const wide = await page.evaluate((limit) => {
    if (document.documentElement.scrollWidth <= limit) return [];
    return [...document.querySelectorAll('body *')]
      .filter((element) => element.getBoundingClientRect().right > limit + 0.5)
      .map((element) => `<${element.localName} class="${element.getAttribute('class') ?? ''}">`)
      .concat(`page is ${String(document.documentElement.scrollWidth)} px wide`);
  }, width);
  expect(wide, `${page.url()} at ${String(width)} px`).toEqual([]);
}

/**
 * Sets the text size as a reader would in the browser's settings (WCAG 1.4.4).
 *
 * @param percent of the normal size
 */
export async function textSize(page: Page, percent: number): Promise<void> {
  await page.evaluate(
    (size) => {
      document.documentElement.style.fontSize = size;
    },
    `${String(percent)}%`,
  );
}

/**
 * Asserts that everything matching is at least so many CSS pixels wide and high, and that
 * something matches. 44 px: WCAG 2.5.5.
 */
export async function targetsAtLeast(page: Page, selector: string, px = 44): Promise<void> {
  const sizes = await page.locator(selector).evaluateAll((elements) =>
    elements.map((element) => {
      const { width, height } = element.getBoundingClientRect();
      return { text: element.textContent.trim().slice(0, 40), width, height };
    }),
  );
  expect(sizes.length, `${selector} on ${page.url()}`).toBeGreaterThan(0);
  expect(sizes.filter(({ width, height }) => width < px - 0.01 || height < px - 0.01)).toEqual([]);
}
