// Every check of the test support must fail on a page that deserves it.
import type { Browser, Page } from '@playwright/test';
import { axe } from './support/axe.ts';
import { expect, siteUrl, test } from './support/fixtures.ts';
import { tabOrder } from './support/keyboard.ts';
import { noSidewaysScroll, targetsAtLeast, textSize } from './support/layout.ts';
import { answerLink, walkGuide } from './support/site.ts';
import { watch } from './support/watch.ts';

const page = (body: string, head = '') =>
  `<!doctype html><html lang="en"><head><title>Test page</title><meta name="viewport" content="width=device-width"><link rel="icon" href="data:,">${head}</head><body>${body}</body></html>`;

const MAIN = '<main><h1>Heading</h1><p>Words.</p></main>';

/** Opens pages of our own making at the site's own origin, and gives what the watch found. */
async function found(
  browser: Browser,
  html: string,
  act: (opened: Page) => Promise<unknown> = () => Promise.resolve(),
  headers: Record<string, string> = {},
): Promise<string> {
  const context = await browser.newContext();
  const watched = await watch(context, siteUrl());
  await context.route(`${siteUrl()}made/**`, (route) =>
    route.fulfill({ contentType: 'text/html', body: html, headers }),
  );
  await context.route('https://elsewhere.example/**', (route) => route.fulfill({ body: '' }));
  const opened = await context.newPage();
  await opened.goto(`${siteUrl()}made/page/`, { waitUntil: 'networkidle' });
  await act(opened);
  await context.close();
  return watched.verdict().join('\n');
}

test.skip(({ isMobile }) => !isMobile, 'the support is the same at every size');

test.describe('the watch', () => {
  test('is silent on a page without fault', async ({ browser }) => {
    expect(await found(browser, page(MAIN))).toBe('');
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
      expect(await found(browser, page(MAIN + body))).toMatch(words);
    });

  test('sees what the policy blocks, enforced or only reported', async ({ browser }) => {
    const inline = page(`${MAIN}<p style="color:red">Red</p>`);
    for (const name of ['Content-Security-Policy', 'Content-Security-Policy-Report-Only'])
      expect(await found(browser, inline, undefined, { [name]: "style-src 'self'" }), name).toMatch(
        /policy violation: style-src/,
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
      await opened.setContent(page(MAIN));
      await axe(opened);
      await opened.setContent(page(body));
      await expect(axe(opened)).rejects.toThrow(/axe on/);
    });

  test('the width check names what sticks out', async ({ page: opened }) => {
    await opened.setContent(page(MAIN));
    await noSidewaysScroll(opened);
    await opened.setContent(page('<div class="wide" style="width:5000px">.</div>'));
    await expect(noSidewaysScroll(opened)).rejects.toThrow(/class="wide"|class=\\"wide\\"/);
  });

  test('the size check sees a small target, text size enlarges it', async ({ page: opened }) => {
    await opened.setContent(page('<button style="width:2.5rem;height:2.5rem">x</button>'));
    await expect(targetsAtLeast(opened, 'button')).rejects.toThrow();
    await textSize(opened, 200);
    await targetsAtLeast(opened, 'button');
    await expect(targetsAtLeast(opened, '.none')).rejects.toThrow();
  });

  test('the tab order is that of the page, with rings and hidden ones told', async ({
    page: opened,
  }) => {
    await opened.setContent(
      page(
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
      page(`<main><a data-answer="yes" href="/made-guide/${node}/">Yes</a></main>`);
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
      ),
    ).rejects.toThrow(/is asked at elsewhere/);
  });
});
