import { expect, type Page } from '@playwright/test';

/** One place the Tab key stops at. */
export interface TabStop {
  /** Element name, as `a` or `button`. */
  readonly tag: string;
  /** Its label or text, cut to 60 characters. */
  readonly name: string;
  /** Whether a focus ring is drawn: an outline or a shadow that is there only with the focus. */
  readonly ring: boolean;
  /** Whether some of it is on the screen, with nothing else over the middle of that (WCAG 2.4.11). */
  readonly seen: boolean;
}

/** Of a page with more stops, rows of a long table, those between these and its last are passed over. */
const MOST_STOPS = 150;

/**
 * Presses Tab from the top of the page until it leaves the document, and lists where it stopped.
 * Fails when the focus is caught on the page.
 */
export async function tabOrder(page: Page): Promise<TabStop[]> {
  await page.evaluate(() => {
    getSelection()?.removeAllRanges();
    // A browser goes on from what was used last, focused or not: here from something at the top.
    const top = document.createElement('i');
    top.tabIndex = -1;
    document.body.prepend(top);
    top.focus();
    top.remove();
    scrollTo(0, 0);
  });
  const stops: TabStop[] = [];
  for (;;) {
    await page.keyboard.press('Tab');
    const stop = await page.evaluate((first) => {
      const element = document.activeElement;
      if (!(element instanceof Element) || element === document.body) return undefined;
      const marked = window as { firstStop?: Element };
      if (first) marked.firstStop = element;
      else if (marked.firstStop === element) return undefined;
      const look = () => {
        const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
        return { outline: outlineStyle !== 'none' && outlineWidth !== '0px', boxShadow };
      };
      const box = element.getBoundingClientRect();
      // The middle of what is in the window: a field may be higher than that.
      const within = (from: number, to: number, most: number) =>
        (Math.max(from, 0) + Math.min(to, most)) / 2;
      const top = document.elementFromPoint(
        within(box.left, box.right, innerWidth),
        within(box.top, box.bottom, innerHeight),
      );
      const focused = look();
      const labels = [...((element as HTMLInputElement).labels ?? [])]
        .map(({ textContent }) => textContent)
        .join(' ');
      return {
        tag: element.localName,
        name: (element.getAttribute('aria-label') ?? (labels || element.textContent))
          .trim()
          .slice(0, 60),
        ring: focused.outline || focused.boxShadow !== 'none',
        seen: top !== null && (element.contains(top) || top.contains(element)),
      };
    }, stops.length === 0);
    if (stop === undefined) break;
    stops.push(stop);
    expect(stops.length, 'Tab leads out of the page in the end').toBeLessThan(2 * MOST_STOPS);
    if (stops.length === MOST_STOPS)
      await page.evaluate((behind) => {
        const all = [...document.querySelectorAll<HTMLElement>('a[href], button, input, summary')];
        const shown = all.filter((one) => one.checkVisibility());
        if (shown.length > 2 * behind) shown.at(-behind)?.focus();
      }, MOST_STOPS / 2);
  }
  expect(stops.length, 'Tab stops somewhere').toBeGreaterThan(0);
  return stops;
}
