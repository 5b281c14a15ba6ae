/**
 * The gallery: each component in each of its states, light, dark and in forced colors. The layout is
 * compared by rows, whatever the fonts; the pictures are for people: test-results/gallery.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import type { Locator } from '@playwright/test';
import { components } from './support/components.ts';
import { expect, test } from './support/fixtures.ts';
import { inkOf } from './support/forced.ts';

const SCHEMES = {
  light: { colorScheme: 'light', forcedColors: 'none' },
  dark: { colorScheme: 'dark', forcedColors: 'none' },
  forced: { colorScheme: 'light', forcedColors: 'active' },
} as const;
const DIR = 'test-results/gallery';

/** Children in sight as rows: those that overlap from top to bottom stand side by side. */
const rowsOf = (part: Locator) =>
  part.evaluate((one) => {
    const rows: { bottom: number; names: string[] }[] = [];
    for (const child of one.children) {
      const { top, bottom, height } = child.getBoundingClientRect();
      if (height === 0 || !child.checkVisibility({ visibilityProperty: true })) continue;
      const row = rows.at(-1);
      if (row && top < row.bottom - 1) {
        row.names.push(child.localName);
        row.bottom = Math.max(row.bottom, bottom);
      } else rows.push({ bottom, names: [child.localName] });
    }
    return rows.map(({ names }) => names.join(' ')).join(' / ');
  });

/** Texts that stand out of the component. */
const outside = (part: Locator) =>
  part.evaluate((one) => {
    const box = one.getBoundingClientRect();
    const range = document.createRange();
    range.selectNodeContents(one);
    return [...range.getClientRects()].filter(
      ({ left, right, width }) => width > 1 && (left < box.left - 1 || right > box.right + 1),
    ).length;
  });

for (const [component, examples] of Object.entries(components))
  test(`${component}: every state, in every scheme of colors`, async ({ page }) => {
    const pictures: string[] = [];
    for (const { state, path, part, use, rows } of examples) {
      for (const [scheme, media] of Object.entries(SCHEMES)) {
        await page.goto('about:blank');
        await page.emulateMedia(media);
        await page.goto(path);
        await use?.(page);
        const shown = page.locator('main').locator(part);
        await expect(shown, state).toBeVisible();
        if (rows !== undefined) expect.soft(await rowsOf(shown), `${state}, ${scheme}`).toBe(rows);
        expect.soft(await outside(shown), `${state}, ${scheme}: texts cut`).toBe(0);
        expect.soft(await inkOf(shown), `${state}, ${scheme}: ink`).toBeGreaterThan(0.01);
        const png = (await shown.screenshot()).toString('base64');
        pictures.push(
          `<figure><img src="data:image/png;base64,${png}"><figcaption>${state}, ${scheme}</figcaption></figure>`,
        );
      }
    }
    expect(pictures.length).toBeGreaterThan(2);
    mkdirSync(DIR, { recursive: true });
    writeFileSync(`${DIR}/${component}.html`, `<h1>${component}</h1>${pictures.join('')}`);
  });
