/**
 * The Tab key through the pages of all languages. `EVERY=1` walks every page; without it a sample
 * of them, so that each change can afford it.
 */
import { languages } from '../../src/content/load.ts';
import { expect, test } from './support/fixtures.ts';
import { tabOrder } from './support/keyboard.ts';
import { every, pagesIn } from './support/pages.ts';

test.skip(({ isMobile }) => !isMobile, 'the order is the same on every screen');

for (const language of languages())
  test(`${language}: the Tab key stops at what has a name, a ring and is seen`, async ({
    page,
  }) => {
    test.setTimeout(every ? 3_600_000 : 120_000);
    const pages = pagesIn(language, 40);
    expect(pages.length).toBeGreaterThan(4);
    let stops = 0;
    for (const path of pages) {
      await page.goto(path);
      const order = await tabOrder(page);
      // The way past the top, the way home, the danger list, and something to do.
      expect(order.length, path).toBeGreaterThan(4);
      expect(order[0]?.name, path).toBe(await page.locator('.skip').innerText());
      // WCAG 4.1.2, 2.4.7, 2.4.11.
      expect(
        order.filter(({ name, ring, seen }) => name === '' || !ring || !seen),
        path,
      ).toEqual([]);
      stops += order.length;
    }
    const counts = `${language}: ${String(pages.length)} pages, ${String(stops)} stops of the Tab key`;
    test.info().annotations.push({ type: 'walked', description: counts });
    console.log(counts);
  });
