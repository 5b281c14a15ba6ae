// Every check of pages as readers set them up must fail on a page that deserves it.
import { expect, test } from './support/fixtures.ts';
import { borderless, inkOf, lostDrawings, ringSeen, unreadable } from './support/forced.ts';
import { moving, noteSmoothScrolls } from './support/motion.ts';
import { spaceText, spoiltTexts } from './support/spacing.ts';
import { tightTargets } from './support/targets.ts';

const html = (body: string) =>
  `<!doctype html><html lang="en"><head><title>Test page</title><meta name="viewport" content="width=device-width"></head><body>${body}</body></html>`;
const button = (style: string) => `<button style="${style}">Press</button>`;
const drawing = (colour: string) =>
  `<div class="drawing"><svg width="100" height="60"><path d="M5 5h80v40" fill="none" stroke="${colour}" stroke-width="3"/></svg></div>`;

test.skip(({ isMobile }) => !isMobile, 'the support is the same at every size');

test.describe('in forced colours', () => {
  test.beforeEach(({ page }) => page.emulateMedia({ forcedColors: 'active' }));

  test('a control without a border is seen', async ({ page }) => {
    await page.setContent(html(button('border: 2px solid transparent')));
    expect(await borderless(page)).toEqual([]);
    for (const style of [
      'border: 0',
      'border: solid transparent; border-width: 2px 2px 0 2px',
      'border: 2px solid #eee; forced-color-adjust: none',
    ]) {
      await page.setContent(html(button(style)));
      expect(await borderless(page), style).toEqual(['no border: button. Press']);
    }
    await page.setContent(html('<p>Nothing to press</p>'));
    await expect(borderless(page)).rejects.toThrow(/controls/);
  });

  test('text that its ground swallows is seen', async ({ page }) => {
    await page.setContent(html(`<p>Words</p>${button('background: #700; color: #fff')}`));
    expect(await unreadable(page)).toEqual([]);
    // A colour of the system is kept where all others are forced.
    await page.setContent(html(button('background: CanvasText; color: #fff')));
    expect(await unreadable(page)).toEqual(['unreadable: button Press']);
    await page.setContent(html('<p></p>'));
    await expect(unreadable(page)).rejects.toThrow(/texts/);
  });

  test('a drawing whose lines are lost is seen', async ({ page }) => {
    await page.setContent(html(drawing('currentColor')));
    expect(await lostDrawings(page)).toEqual([]);
    expect(await inkOf(page.locator('svg'))).toBeLessThan(0.2);
    await page.setContent(html(drawing('#ddd')));
    expect(await lostDrawings(page)).toHaveLength(1);
    await page.setContent(html('<p>No drawing</p>'));
    await expect(lostDrawings(page)).rejects.toThrow(/drawings/);
  });

  test('a ring that is missing, or on something unseen, is seen', async ({ page }) => {
    for (const [style, there] of [
      ['outline: 3px solid', true],
      ['outline: none', false],
      // A shadow is taken away where colours are forced.
      ['outline: none; box-shadow: 0 0 0 3px', false],
      ['outline: 3px solid; opacity: 0', false],
    ] as const) {
      await page.setContent(
        html(`<style>button:focus { ${style} }</style><p style="padding: 1em">${button('')}</p>`),
      );
      const seen = ringSeen(page.locator('button'));
      if (there) await seen;
      else await expect(seen, style).rejects.toThrow(/ring/);
    }
  });
});

test('what moves, or would, is seen', async ({ page }) => {
  await noteSmoothScrolls(page);
  await page.goto('/404.html');
  expect(await moving(page)).toEqual([]);
  const styled = async (style: string) => {
    await page.evaluate((text) => {
      const sheet = new CSSStyleSheet();
      sheet.replaceSync(`@keyframes turn { to { rotate: 1turn } } ${text}`);
      document.adoptedStyleSheets = [sheet];
    }, style);
    return (await moving(page)).join();
  };
  expect(await styled('h1 { transition: color 0.005s }')).toBe('');
  expect(await styled('h1 { transition: color 0.2s }')).toContain('h1. has a transition');
  expect(await styled('h1::before { content: ""; animation: turn 1s infinite }')).toMatch(
    /an animation runs.*h1. has an animation/,
  );
  expect(await styled('html { scroll-behavior: smooth }')).toContain('html. scrolls smoothly');
  expect(await styled('')).toBe('');
  await page.evaluate(() => document.body.scrollIntoView({ behavior: 'smooth' }));
  expect(await moving(page)).toEqual(['scrollIntoView is asked to be smooth']);
});

test('texts that are cut or lie over each other are seen', async ({ page }) => {
  const words = 'Some words that need room';
  await page.setContent(html(`<p>${words}</p><button>${words}</button><p>${words}</p>`));
  await spaceText(page);
  expect(await spoiltTexts(page)).toEqual([]);
  for (const [body, found] of [
    [`<p style="height: 1.2em; overflow: hidden">${words} ${words}</p>`, /^cut: p/],
    [`<p style="width: 6em; overflow: clip; white-space: nowrap">${words}</p>`, /^cut: p/],
    [`<button style="width: 8em; height: 2em">${words}</button>`, /^cut: button/],
    [`<p>${words}</p><p style="margin-top: -3em">${words}</p>`, /^over each other/],
  ] as const) {
    await page.setContent(html(body));
    await spaceText(page);
    expect((await spoiltTexts(page)).join('\n'), body).toMatch(found);
  }
});

test('targets smaller than a finger or on each other are seen', async ({ page }) => {
  const size = 'display: inline-block; width: 44px; height: 44px';
  const link = (style: string) => `<a href="#x" style="${style}">A</a>`;
  await page.setContent(html(`<p>${link(size)} ${link(size)} ${link('')} in a sentence</p>`));
  expect(await tightTargets(page)).toEqual([]);
  for (const [body, found] of [
    [link('display: inline-block; width: 44px; height: 43px'), /^small: a "A" 44.0 × 43.0$/],
    // A link alone is in no sentence.
    [`<p>${link('')}</p>`, /^small/],
    [`<p>${link(size)}${link(`${size}; margin-inline-start: -9px`)}</p>`, /^shared/],
    [`<label>On <input type="checkbox"></label>`, /^small: label/],
  ] as const) {
    await page.setContent(html(body));
    expect((await tightTargets(page)).join('\n'), body).toMatch(found);
  }
  await page.setContent(html('<p>Nothing</p>'));
  await expect(tightTargets(page)).rejects.toThrow(/targets/);
});
