// The site in all its languages: what is done in one is the same in the others.
import { languageOf, languages, localeOf, staffLanguages } from '../../src/content/load.ts';
import { expect, test } from './support/fixtures.ts';
import { codeFor, shownCode, to } from './support/note.ts';
import { formatFragment } from '../../src/address/fragment.ts';
import { axe } from './support/axe.ts';
import { rootOf } from './support/pages.ts';
import { answerLink, giveAnswer } from './support/site.ts';

const [main = '', ...others] = languages();

for (const language of languages())
  test(`${language}: the keyboard alone leads to a stop, and its note code is the same as in English`, async ({
    page,
  }) => {
    const note = to('stop-book');
    await page.goto(`${rootOf(language)}door-locked/danger/`);
    for (const { answer } of note.journey) {
      const link = answerLink(page, answer);
      await expect(link).toHaveAttribute('href', /j=/);
      await link.focus();
      await giveAnswer(link, () => page.keyboard.press('Enter'));
      await expect(link).toHaveCount(0);
    }
    await expect(page.locator('html')).toHaveAttribute('lang', localeOf(language));
    await expect(page.locator('html')).toHaveAttribute('dir', languageOf(language).direction);
    await page.goto(`${rootOf(language)}note/#${formatFragment(note)}`);
    expect(await shownCode(page)).toBe(codeFor(note));
    await axe(page);
  });

test('switching the language keeps the page and the journey, there and back', async ({ page }) => {
  test.skip(others.length === 0, 'this copy speaks one language');
  await page.goto('/door-locked/danger/');
  await giveAnswer(answerLink(page, 'none'));
  await expect(page).toHaveURL(/since\/#.*j=/);
  for (const language of [...others, main]) {
    await page.locator(`.languages a[hreflang="${localeOf(language)}"]`).click();
    await expect(page.locator('html')).toHaveAttribute('lang', localeOf(language));
    const url = new URL(page.url());
    expect(url.pathname).toBe(`${rootOf(language)}door-locked/since/`);
    expect(new URLSearchParams(url.hash.slice(1)).get('j')).toBe('danger.none');
    await expect(page.locator('.lost')).toBeHidden();
  }
});

test('a code made in one language is read in the others', async ({ page }) => {
  test.skip(staffLanguages().length < 2, 'this copy speaks one language to staff');
  const code = codeFor(to('stop-book'));
  for (const language of staffLanguages()) {
    await page.goto(`${rootOf(language)}preview/#c=${code}`);
    await expect(page.locator('.ranking li').first()).toBeVisible();
    await expect(page.getByText(code).first()).toBeVisible();
  }
});

test.describe('for a browser that asks for Spanish', () => {
  test.use({ locale: 'es-MX' });
  test('the language is offered and nobody is sent there', async ({ page }) => {
    test.skip(!languages().includes('es'), 'this copy does not speak Spanish');
    await page.goto('/');
    await expect(page.locator('.languages a.wanted')).toHaveText([languageOf('es').name]);
    expect(new URL(page.url()).pathname).toBe('/');
    await page.locator('.languages a.wanted').click();
    await expect(page.locator('.languages a.wanted')).toHaveCount(0);
  });
});

test('from right to left the page is mirrored, codes and numbers are not', async ({ page }) => {
  test.skip(!languages().includes('ar'), 'this copy does not speak Arabic');
  await page.goto(`/ar/note/#${formatFragment(to('stop-book'))}`);
  await shownCode(page);
  const x = async (selector: string, index = 0) =>
    (await page.locator(selector).nth(index).boundingBox())?.x ?? NaN;
  expect(await x('.firm')).toBeGreaterThan(await x('.danger-list summary'));
  expect(await x('.code-card > .groups li', 0)).toBeLessThan(await x('.code-card > .groups li', 1));
  for (const number of await page.locator('.calls strong').all())
    await expect(number).toHaveCSS('direction', 'ltr');
  // Unicode UAX 9: a number in a sentence is set apart, so that its groups keep their order.
  await expect(page.locator('footer')).toContainText('\u2066(207)\u00a0555-0142\u2069');
  await page.goto('/ar/door-locked/stop-electric/');
  await expect(page.locator('.reach')).toContainText('\u2066(207)\u00a0555-0143\u2069');
});
