/**
 * The gallery: each component in each of its states, in every language of its pages; in the first
 * dark and in forced colors too, in all with `EVERY=1`. The layout is compared by rows, each read from where a line begins, whatever the
 * fonts; the pictures are for people: test-results/gallery/index.html.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import type { Locator } from '@playwright/test';
import { languageOf, languages, mainLanguage, staffLanguages } from '../../src/content/load.ts';
import { components } from './support/components.ts';
import { expect, test } from './support/fixtures.ts';
import { inkOf } from './support/forced.ts';
import { every, rootOf } from './support/pages.ts';

const SCHEMES = {
  light: { colorScheme: 'light', forcedColors: 'none' },
  dark: { colorScheme: 'dark', forcedColors: 'none' },
  forced: { colorScheme: 'light', forcedColors: 'active' },
} as const;
const DIR = 'test-results/gallery';

/** Children in sight as rows: those that overlap from top to bottom stand side by side. */
const rowsOf = (part: Locator) =>
  part.evaluate((one) => {
    const rows: { bottom: number; of: { name: string; from: number }[] }[] = [];
    const sign = getComputedStyle(one).direction === 'rtl' ? -1 : 1;
    for (const child of one.children) {
      const { top, bottom, height, left } = child.getBoundingClientRect();
      if (height === 0 || !child.checkVisibility({ visibilityProperty: true })) continue;
      const here = { name: child.localName, from: sign * left };
      const row = rows.at(-1);
      if (row && top < row.bottom - 1) {
        row.of.push(here);
        row.bottom = Math.max(row.bottom, bottom);
      } else rows.push({ bottom, of: [here] });
    }
    const inLine = rows.map(({ of }) => of.toSorted((a, b) => a.from - b.from));
    return inLine.map((of) => of.map(({ name }) => name).join(' ')).join(' / ');
  });

/** Texts that stand out of the component; what only a screen reader is told has no place in it. */
const outside = (part: Locator) =>
  part.evaluate((one) => {
    const box = one.getBoundingClientRect();
    const range = document.createRange();
    const texts = document.createTreeWalker(one, NodeFilter.SHOW_TEXT);
    let out = 0;
    while (texts.nextNode()) {
      if (texts.currentNode.parentElement?.closest('.unseen')) continue;
      range.selectNodeContents(texts.currentNode);
      for (const { left, right, width } of range.getClientRects())
        if (width > 1 && (left < box.left - 1 || right > box.right + 1)) out += 1;
    }
    return out;
  });

/** A page a component, and one that leads to all of them. */
function writeGallery(component: string, figures: readonly string[]): void {
  mkdirSync(DIR, { recursive: true });
  writeFileSync(`${DIR}/${component}.html`, `<h1>${component}</h1>${figures.join('')}`);
  const links = Object.keys(components).map(
    (name) => `<li><a href="${name}.html">${name}</a></li>`,
  );
  writeFileSync(`${DIR}/index.html`, `<h1>Components</h1><ul>${links.join('')}</ul>`);
}

for (const [component, examples] of Object.entries(components))
  test(`${component}: every state, in every language, and every scheme of colors`, async ({
    page,
  }) => {
    const figures: string[] = [];
    for (const { state, path, part, use, rows } of examples)
      for (const language of /^\/(?:preview|desk)\//.test(path) ? staffLanguages() : languages()) {
        await page.goto('about:blank');
        await page.emulateMedia(SCHEMES.light);
        await page.goto(rootOf(language) + path.slice(1));
        await use?.(page);
        const shown = page.locator('main').locator(part);
        await expect(shown, state).toBeVisible();
        expect(await page.locator('html').getAttribute('dir')).toBe(languageOf(language).direction);
        for (const [scheme, media] of Object.entries(SCHEMES)) {
          // No words are of another color in another language.
          if (scheme !== 'light' && language !== mainLanguage() && !every) continue;
          await page.emulateMedia(media);
          const what = `${state}, ${language}, ${scheme}`;
          if (rows !== undefined) expect.soft(await rowsOf(shown), what).toBe(rows);
          expect.soft(await outside(shown), `${what}: texts cut`).toBe(0);
          expect.soft(await inkOf(shown), `${what}: ink`).toBeGreaterThan(0.01);
          const png = (await shown.screenshot()).toString('base64');
          figures.push(
            `<figure><img src="data:image/png;base64,${png}"><figcaption>${what}</figcaption></figure>`,
          );
        }
      }
    expect(figures.length).toBeGreaterThan(languages().length);
    writeGallery(component, figures);
  });
