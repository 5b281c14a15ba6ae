import { expect, type Page } from '@playwright/test';

/** A finger's size in CSS pixels (WCAG 2.5.5). */
export const FINGER = 44;

/**
 * Targets that are smaller than a finger, or that share room with another target, in words. Links
 * within a sentence may be smaller (2.5.5, "Inline"); axe holds those to 24 px of their own (2.5.8).
 */
export async function tightTargets(page: Page): Promise<string[]> {
  const { seen, faults } = await page.evaluate((least) => {
    const inSentence = (element: Element) => {
      const sentence = element.closest('p, li, dd, dt, td, figcaption, span');
      return (
        (element.closest('sup') !== null || getComputedStyle(element).display === 'inline') &&
        sentence !== null &&
        sentence.textContent.trim().length > element.textContent.trim().length
      );
    };
    const found = [
      ...document.querySelectorAll('a[href], button, summary, input, select, textarea'),
    ].map((element) =>
      element.matches('input') ? (element.closest('label') ?? element) : element,
    );
    const targets = [...new Set(found)]
      .filter((element) => element.checkVisibility() && !inSentence(element))
      .map((element) => ({ element, box: element.getBoundingClientRect() }))
      .filter(({ box }) => box.right > 0 && box.width > 0 && box.left < innerWidth);
    const named = ({ element, box }: (typeof targets)[number]) =>
      `${element.localName} "${element.textContent.trim().slice(0, 40)}" ${box.width.toFixed(1)} × ${box.height.toFixed(1)}`;
    const small = targets.filter(({ box }) => Math.min(box.width, box.height) < least - 0.05);
    const shared = targets.flatMap((one, at) =>
      targets
        .slice(at + 1)
        .filter(
          (other) =>
            !one.element.contains(other.element) &&
            !other.element.contains(one.element) &&
            Math.min(one.box.right, other.box.right) - Math.max(one.box.left, other.box.left) >
              0.5 &&
            Math.min(one.box.bottom, other.box.bottom) - Math.max(one.box.top, other.box.top) > 0.5,
        )
        .map((other) => `shared: ${named(one)} | ${named(other)}`),
    );
    return {
      seen: targets.length,
      faults: [...small.map((target) => `small: ${named(target)}`), ...shared],
    };
  }, FINGER);
  expect(seen, `targets on ${page.url()}`).toBeGreaterThan(0);
  return faults;
}
