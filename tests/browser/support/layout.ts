import { expect, type Page } from '@playwright/test';

/** What makes the page wider than its window, named (WCAG 1.4.10). */
export async function wideParts(page: Page): Promise<string[]> {
  const width = page.viewportSize()?.width;
  if (width === undefined) throw new Error('the page has no fixed window size');
  return page.evaluate((limit) => {
    if (document.documentElement.scrollWidth <= limit) return [];
    return [...document.querySelectorAll('body *')]
      .filter((element) => element.getBoundingClientRect().right > limit + 0.5)
      .map((element) => `<${element.localName} class="${element.getAttribute('class') ?? ''}">`)
      .concat(
        `page is ${String(document.documentElement.scrollWidth)} px wide at ${String(limit)} px`,
      );
  }, width);
}

/** Asserts that the page is no wider than its window. */
export async function noSidewaysScroll(page: Page): Promise<void> {
  expect(await wideParts(page), page.url()).toEqual([]);
}

/**
 * What is wrong at this width: parts that stick out, and buttons, or links made as buttons, whose
 * texts do not fit into them.
 */
export async function tooWide(page: Page): Promise<string[]> {
  const cut = await page.evaluate(() =>
    [...document.querySelectorAll('.button, button, summary, .answers a, .calls a')]
      .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth + 1)
      .map(({ textContent }) => `cut off at ${String(innerWidth)} px: ${textContent.trim()}`),
  );
  return [...(await wideParts(page)), ...cut];
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
