// What the site lets nobody do, tried in a real browser.
import type { Page } from '@playwright/test';
import { policy, withStyle } from '../../src/site/policy.ts';
import { expect, siteUrl, test } from './support/fixtures.ts';
import { MARK, hostileTexts } from './support/hostile.ts';
import { codeFor, open, to, shortest } from './support/note.ts';
import { formatJourney } from '../../src/address/journey-text.ts';

// What stands in each page itself is held by tests/built, what hosts send by tests/built/host.
test('the policy comes in the headers as well, with what no page can say of itself', async ({
  request,
}) => {
  for (const path of ['/', '/door-locked/danger/', '/preview/', '/404.html', '/nothing/']) {
    const headers = (await request.get(new URL(path, siteUrl()).href)).headers();
    const said = headers['content-security-policy'];
    const hashes = said?.match(/'sha256-[\w+/]{43}='/g) ?? [];
    expect(hashes.length, path).toBeGreaterThan(3);
    expect(said, path).toBe(`${withStyle(policy, hashes)}; frame-ancestors 'none'`);
    expect(headers['referrer-policy']).toBe('no-referrer');
    expect(headers['x-content-type-options']).toBe('nosniff');
  }
});

test('the camera is for the preview alone, the microphone for nobody', async ({ page }) => {
  const allowed = () =>
    page.evaluate(() => {
      const { featurePolicy } = document as unknown as {
        featurePolicy: { allowsFeature(name: string): boolean };
      };
      return ['camera', 'microphone', 'geolocation'].filter((name) =>
        featurePolicy.allowsFeature(name),
      );
    });
  await page.goto('/preview/');
  expect(await allowed()).toEqual(['camera']);
  for (const path of ['/', '/note/', '/door-locked/danger/', '/about/', '/404.html']) {
    await page.goto(path);
    expect(await allowed(), path).toEqual([]);
  }
});

test('no script can make markup, run text, or start a worker but ours', async ({
  page,
  watched,
}) => {
  watched.expect(/trusted-types|This document requires 'Trusted/);
  for (const path of ['/preview/', '/door-locked/danger/']) {
    await page.goto(path);
    const outcome = await page.evaluate(async () => {
      // DevTools calls may use eval whatever the policy says; a later task may not.
      await new Promise((later) => setTimeout(later));
      const tried: Record<string, () => unknown> = {
        innerHTML: () => (document.createElement('div').innerHTML = '<b>x</b>'),
        outerHTML: () => document.createElement('div').insertAdjacentHTML('beforeend', '<b>x'),
        // eslint-disable-next-line @typescript-eslint/no-implied-eval -- that it cannot be done is the point
        Function: () => (new Function('return 1') as () => number)(),
        'script.src': () => (document.createElement('script').src = '/x.js'),
        policy: () => window.trustedTypes?.createPolicy('default', { createHTML: (x) => x }),
        again: () => window.trustedTypes?.createPolicy('worker', { createScriptURL: (x) => x }),
      };
      return Object.entries(tried).map(([name, attempt]) => {
        try {
          attempt();
          return `${name} worked`;
        } catch {
          return name;
        }
      });
    });
    expect(outcome.filter((name) => name.endsWith('worked'))).toEqual([]);
    expect(outcome.length).toBe(6);
  }
});

/** Goes to each fragment in turn, lets the page follow, and names those that left something. */
async function tryAll(page: Page, hashes: readonly string[]): Promise<string[]> {
  return page.evaluate(
    async ({ hashes, mark }) => {
      const scripts = document.scripts.length;
      const found: string[] = [];
      for (const hash of hashes) {
        const moved = new Promise((done) => addEventListener('hashchange', done, { once: true }));
        if (location.hash !== hash) {
          location.hash = hash;
          if (location.hash === '' || location.hash === '#') continue;
          await Promise.race([moved, new Promise((done) => setTimeout(done, 500))]);
        }
        await new Promise((done) => setTimeout(done));
        const links = [...document.querySelectorAll<HTMLAnchorElement>('a[href]')];
        const bad =
          document.querySelector(`[${mark}]`) !== null ||
          'hostile' in window ||
          document.scripts.length !== scripts ||
          links.some(({ protocol }) => !/^(?:https?|tel):$/.test(protocol)) ||
          links.some(({ protocol, host }) => protocol !== 'tel:' && host !== location.host);
        if (bad) found.push(hash);
      }
      return found;
    },
    { hashes, mark: MARK },
  );
}

test.describe('hostile text stays text', () => {
  const texts = hostileTexts();
  const encode = (text: string) => encodeURIComponent(text.toWellFormed());
  const note = to('stop-book');
  const code = codeFor(note);
  const journey = formatJourney(note.journey);
  const at = (node: string) => formatJourney(shortest.get(node as never) ?? []);

  for (const [what, path, hashesOf, shown] of [
    [
      'in every part of the note’s address',
      '/note/',
      (text: string) => [
        `#j=${journey}&e=${text}&m=${text}&r=${text}`,
        `#j=${text}`,
        `#j=${journey}&d=${text}.gas~fuel.${text}&on=${text}&w=${text}&${text}=1`,
      ],
      '#remark',
    ],
    [
      'in every part of the preview’s address',
      '/preview/',
      (text: string) => [`#c=${code}&e=${text}&m=${text}&r=${text}`, `#c=${text}`],
      '.note',
    ],
    [
      'in every part of a question’s address',
      '/door-locked/display/',
      (text: string) => [
        `#j=${at('display')}&e=${text}`,
        `#j=${text}`,
        `#j=${at('display')}.${text}&w=${text}`,
        `#${text}`,
      ],
      'h1',
    ],
  ] as const)
    test(what, async ({ page }) => {
      expect(texts.length).toBeGreaterThan(300);
      await page.goto(path);
      const hashes = texts.map(encode).map((text, index) => {
        const places = hashesOf(text);
        return places[index % places.length] ?? '';
      });
      expect(await tryAll(page, hashes)).toEqual([]);
      await page.evaluate((mark) => {
        document.querySelector('main')?.setAttribute(mark, '');
      }, MARK);
      expect(
        await tryAll(page, hashes.slice(0, 1)),
        'what is looked for would be seen',
      ).toHaveLength(1);
      // The page is alive and shows the last text where such texts go.
      const last = hashesOf(encode(`<b ${MARK}>last</b>`))[0] ?? '';
      await page.goto(`/about/`);
      await page.goto(path + last);
      await expect(page.locator(shown).first()).toBeVisible();
      if (path !== '/door-locked/display/')
        await expect
          .poll(() =>
            page.locator('main').evaluate((main) => {
              const fields = main.querySelectorAll<HTMLInputElement>('input, textarea');
              return [main.textContent, ...[...fields].map(({ value }) => value)].join();
            }),
          )
          .toContain(`<b ${MARK}>last</b>`);
      await expect(page.locator(`[${MARK}]`)).toHaveCount(0);
    });

  test('typed into the preview', async ({ page }) => {
    await page.goto('/preview/');
    const some = texts.filter((_, index) => index % 12 === 0);
    expect(some.length).toBeGreaterThan(25);
    for (const text of some) {
      await page.locator('#code').fill(text);
      await page.locator('#code').press('Enter');
    }
    expect(await tryAll(page, ['#c=last'])).toEqual([]);
  });

  test('left in storage', async ({ page }) => {
    await page.goto('/');
    for (const text of texts.slice(0, 15)) {
      await page.evaluate((saved) => localStorage.setItem('hobnote.journey', saved), text);
      await page.reload();
      await expect(page.locator('.resume')).toBeHidden();
      await expect(page.locator(`[${MARK}]`)).toHaveCount(0);
    }
    await open(page, note);
    await expect(page.locator('.code-card')).toBeVisible();
  });
});
