/**
 * Reading a page out. Debian's Chromium brings no voices: a stand-in of the Web Speech API
 * (W3C community report, https://webaudio.github.io/web-speech-api/) takes down what is said.
 */
import type { Page } from '@playwright/test';
import { formatFragment } from '../../src/address/fragment.ts';
import { languages, localeOf } from '../../src/content/load.ts';
import { axe } from './support/axe.ts';
import { expect, test } from './support/fixtures.ts';
import { noSidewaysScroll } from './support/layout.ts';
import { to } from './support/codes.ts';
import { rootOf } from './support/pages.ts';

interface Said {
  text: string;
  lang: string;
}
declare global {
  interface Window {
    /** All that was given to the voice, and the voice's next word: it begins or ends a text. */
    said: Said[];
    next: () => void;
  }
}

/** A voice that says one text after the other, each when the test asks for it. */
async function voices(page: Page, tags: readonly string[]): Promise<void> {
  await page.addInitScript((langs) => {
    const queue: SpeechSynthesisUtterance[] = [];
    let begun = false;
    window.said = [];
    const speech = new EventTarget() as EventTarget & Record<string, unknown>;
    speech['getVoices'] = () => langs.map((lang) => ({ lang }));
    speech['speak'] = (words: SpeechSynthesisUtterance) => {
      queue.push(words);
      window.said.push({ text: words.text, lang: words.lang });
    };
    speech['cancel'] = () => {
      begun = false;
      // As browsers do it: one after the other, later.
      for (const words of queue.splice(0))
        setTimeout(() => {
          words.onerror?.(new Event('error') as SpeechSynthesisErrorEvent);
        });
    };
    window.next = () => {
      const [words] = queue;
      if (begun) queue.shift();
      const event = new Event(begun ? 'end' : 'start') as SpeechSynthesisEvent;
      begun = !begun;
      (begun ? words?.onstart : words?.onend)?.call(words as SpeechSynthesisUtterance, event);
    };
    Object.defineProperty(window, 'speechSynthesis', { value: speech });
    Object.assign(window, {
      SpeechSynthesisUtterance: class {
        lang = '';
        onstart = null;
        onend = null;
        onerror = null;
        readonly text: string;
        constructor(text: string) {
          this.text = text;
        }
      },
    });
  }, tags);
}

const listen = (page: Page) => page.locator('button.listen');
const said = (page: Page) => page.evaluate(() => window.said);
const next = (page: Page) => page.evaluate(() => window.next());

test('a question is read from its heading to its last answer, each part marked while it is read', async ({
  page,
}) => {
  await voices(page, ['en-US']);
  await page.goto('/door-locked/danger/');
  await listen(page).click();
  await expect(listen(page)).toHaveAttribute('aria-pressed', 'true');
  const answers = await page.locator('.answers a').allInnerTexts();
  const all = await said(page);
  expect(answers.length).toBeGreaterThan(3);
  expect(all.slice(-answers.length).map(({ text }) => text)).toEqual(answers);
  expect(all.map(({ text }) => text)).toContain(await page.locator('h1').innerText());
  expect(all.map(({ text }) => text)).not.toContain(
    await page.locator('.why p').first().innerText(),
  );
  for (const [place, { text }] of all.entries()) {
    await next(page);
    const marked = page.locator('.spoken');
    await expect(marked).toHaveCount(1);
    expect(await marked.innerText(), String(place)).toBe(text);
    await expect(marked).toBeInViewport();
    await next(page);
  }
  await expect(page.locator('.spoken')).toHaveCount(0);
  await expect(listen(page)).toHaveAttribute('aria-pressed', 'false');
});

test('a second press stops it, and a third begins anew', async ({ page }) => {
  await voices(page, ['en-US']);
  await page.goto('/care/foil/');
  await listen(page).click();
  await next(page);
  await expect(page.locator('.spoken')).toHaveCount(1);
  const { length } = await said(page);
  await listen(page).click();
  await listen(page).click();
  await expect(page.locator('.spoken')).toHaveCount(0);
  // What was stopped reports in a later task: that must not end what has begun since.
  await page.evaluate(() => new Promise((done) => setTimeout(done)));
  await expect(listen(page)).toHaveAttribute('aria-pressed', 'true');
  expect(await said(page)).toHaveLength(2 * length);
  await next(page);
  await expect(page.locator('.spoken')).toHaveCount(1);
  await axe(page);
});

test('there is no button without a voice of the page’s language, and one as soon as it comes', async ({
  page,
}) => {
  const langs: string[] = ['fr-FR'];
  await voices(page, langs);
  await page.goto('/care/foil/');
  await expect(listen(page)).toHaveCount(1);
  await expect(listen(page)).toBeHidden();
  await page.evaluate(() => {
    const { speechSynthesis: speech } = window;
    speech.getVoices = () => [{ lang: 'en_GB' } as SpeechSynthesisVoice];
    speech.onvoiceschanged?.(new Event('voiceschanged'));
  });
  await expect(listen(page)).toBeVisible();
});

test('pages for staff have none', async ({ page }) => {
  await voices(page, ['en-US']);
  await page.goto('/desk/');
  await expect(page.locator('main h1')).toBeVisible();
  await expect(listen(page)).toHaveCount(0);
});

for (const language of languages()) {
  test(`${language}: every kind of homeowner’s page is read in its language, whole and once`, async ({
    page,
  }) => {
    await voices(page, ['en-US', 'es-MX', 'fr-CA', 'ar-EG']);
    const root = rootOf(language);
    const note = `note/#${formatFragment(to('stop-book'))}`;
    for (const path of ['', 'door-locked/breaker-off/', 'burner/wait-el/', 'care/foil/', note]) {
      await page.goto(root + path);
      await expect(page.locator('main h1, main h2').first()).toBeVisible();
      await expect(listen(page)).toBeVisible();
      // The note's script writes most of its page.
      if (path === note) await expect(page.locator('.qr svg')).toBeVisible();
      await listen(page).click();
      const all = await said(page);
      expect(all.length, path).toBeGreaterThan(4);
      expect(new Set(all.map(({ lang }) => lang))).toEqual(new Set([localeOf(language)]));
      expect(all.every(({ text }) => text.trim() !== '')).toBe(true);
      for (const heading of await page.locator('main h1:visible').allInnerTexts())
        expect(all.filter(({ text }) => text === heading)).toHaveLength(1);
      for (const signal of await page.locator('main .care h2:visible').allInnerTexts())
        expect(all.map(({ text }) => text)).toContain(signal);
      await noSidewaysScroll(page);
      await page.goto('about:blank');
    }
  });
}
