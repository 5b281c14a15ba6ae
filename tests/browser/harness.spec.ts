// Every check of the test support must fail on a page that deserves it.
import type { Browser } from '@playwright/test';
import { axe } from './support/axe.ts';
import { expect, siteUrl, test } from './support/fixtures.ts';
import { borderless, inkOf, lostDrawings, ringSeen, unreadable } from './support/forced.ts';
import { tabOrder } from './support/keyboard.ts';
import { noSidewaysScroll, targetsAtLeast, textSize } from './support/layout.ts';
import { moving, noteSmoothScrolls } from './support/motion.ts';
import { answerLink, walkGuide } from './support/site.ts';
import { spaceText, spoiltTexts } from './support/spacing.ts';
import { tightTargets } from './support/targets.ts';
import { watch } from './support/watch.ts';

const html = (body: string, head = '') =>
  `<!doctype html><html lang="en"><head><title>Test page</title><meta name="viewport" content="width=device-width"><link rel="icon" href="data:,">${head}</head><body>${body}</body></html>`;

const MAIN = '<main><h1>Heading</h1><p>Words.</p></main>';

/** Opens pages of our own making at the site's own origin, and gives what the watch found. */
async function found(
  browser: Browser,
  body: string,
  seen?: RegExp,
  headers: Record<string, string> = {},
): Promise<string> {
  const context = await browser.newContext();
  const watched = await watch(context, siteUrl());
  await context.route(`${siteUrl()}made/**`, (route) =>
    route.fulfill({ contentType: 'text/html', body, headers }),
  );
  await context.route('https://elsewhere.example/**', (route) => route.fulfill({ body: '' }));
  const opened = await context.newPage();
  await opened.goto(`${siteUrl()}made/page/`);
  // What a page does at once has been done and told before a task that comes later.
  await opened.evaluate(() => new Promise((done) => requestIdleCallback(done)));
  const verdict = () => watched.verdict().join('\n');
  if (seen) await expect.poll(verdict).toMatch(seen);
  await context.close();
  return verdict();
}

test.describe('the watch', () => {
  test('is silent on a page without fault', async ({ browser }) => {
    expect(await found(browser, html(MAIN))).toBe('');
  });

  for (const [what, body, words] of [
    ['a console error', '<script>console.error("oh")</script>', /console error .*oh/],
    ['a console warning', '<script>console.warn("hm")</script>', /console warning .*hm/],
    ['an uncaught error', '<script>throw new Error("lost")</script>', /uncaught: lost/],
    ['a rejected promise', '<script>Promise.reject(new Error("gone"))</script>', /uncaught: gone/],
    ['a missing file', '<img alt="" src="/nothing.png">', /answered 404: .*nothing\.png/],
    ['another origin', '<img alt="" src="https://elsewhere.example/x.png">', /leaves the site/],
    ['a dead address', '<img alt="" src="http://127.0.0.1:1/x.png">', /request failed/],
    ['a socket', '<script>new WebSocket("ws://127.0.0.1:1/")</script>', /opens a socket/],
  ] as const)
    test(`sees ${what}`, async ({ browser }) => {
      expect(await found(browser, html(MAIN + body), words)).toMatch(words);
    });

  test('sees what the policy blocks, enforced or only reported', async ({ browser }) => {
    const inline = html(`${MAIN}<p style="color:red">Red</p>`);
    const words = /policy violation: style-src/;
    for (const name of ['Content-Security-Policy', 'Content-Security-Policy-Report-Only'])
      expect(await found(browser, inline, words, { [name]: "style-src 'self'" }), name).toMatch(
        words,
      );
  });

  test('holds a test to what it expects', async ({ browser }) => {
    const context = await browser.newContext();
    const watched = await watch(context, siteUrl());
    watched.expect(/answered 404/);
    expect(watched.verdict().join()).toMatch(/did not happen/);
    await (await context.newPage()).goto(`${siteUrl()}nothing/`);
    watched.expect(/console error .*404/);
    expect(watched.verdict()).toEqual([]);
    await context.close();
  });
});

test.describe('the checks', () => {
  for (const [what, body] of [
    ['an image without words', `<main><h1>H</h1><img src="data:,"></main>`],
    ['pale text', `<main><h1>H</h1><p style="color:#777;background:#fff">Pale</p></main>`],
    ['a page without a main part', '<h1>H</h1><p>Words.</p>'],
    [
      'targets too small',
      '<main><h1>H</h1><button style="all:unset;font-size:8px">a</button><button style="all:unset;font-size:8px">b</button></main>',
    ],
  ] as const)
    test(`axe sees ${what}`, async ({ page: opened }) => {
      await opened.setContent(html(MAIN));
      await axe(opened);
      await opened.setContent(html(body));
      await expect(axe(opened)).rejects.toThrow(/axe on/);
    });

  test('the width check names what sticks out', async ({ page: opened }) => {
    await opened.setContent(html(MAIN));
    await noSidewaysScroll(opened);
    await opened.setContent(html('<div class="wide" style="width:5000px">.</div>'));
    await expect(noSidewaysScroll(opened)).rejects.toThrow(/class="wide"|class=\\"wide\\"/);
  });

  test('the size check sees a small target, text size enlarges it', async ({ page: opened }) => {
    await opened.setContent(html('<button style="width:2.5rem;height:2.5rem">x</button>'));
    await expect(targetsAtLeast(opened, 'button')).rejects.toThrow();
    await textSize(opened, 200);
    await targetsAtLeast(opened, 'button');
    await expect(targetsAtLeast(opened, '.none')).rejects.toThrow();
  });

  test('the tab order is that of the page, with rings and hidden ones told', async ({
    page: opened,
  }) => {
    await opened.setContent(
      html(
        `<a href="#a">One</a> <button style="outline:none">Two</button>
         <p style="position:relative"><a href="#c">Three</a>
         <span style="position:absolute;inset:0;background:#fff">over it</span></p>`,
      ),
    );
    const stops = await tabOrder(opened);
    expect(stops.map(({ name }) => name)).toEqual(['One', 'Two', 'Three']);
    expect(stops.map(({ ring }) => ring)).toEqual([true, false, true]);
    expect(stops.map(({ seen }) => seen)).toEqual([true, true, false]);
  });

  test('a walk fails where the guide is not where the walk says', async ({ page: opened }) => {
    const link = (node: string) =>
      html(`<main><a data-answer="yes" href="/made-guide/${node}/">Yes</a></main>`);
    await opened.route('**/made-guide/**', (route) =>
      route.fulfill({
        contentType: 'text/html',
        body: link(route.request().url().includes('/one/') ? 'two' : 'three'),
      }),
    );
    await walkGuide(opened, [['one', 'yes']], 'made-guide');
    await expect(answerLink(opened, 'yes')).toBeVisible();
    await expect(
      walkGuide(
        opened,
        [
          ['one', 'yes'],
          ['elsewhere', 'yes'],
        ],
        'made-guide',
        2_000,
      ),
    ).rejects.toThrow(/is asked at .*elsewhere/);
  });
});

const button = (style: string) => `<button style="${style}">Press</button>`;
const drawing = (colour: string) =>
  `<div class="drawing"><svg width="100" height="60"><path d="M5 5h80v40" fill="none" stroke="${colour}" stroke-width="3"/></svg></div>`;

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
