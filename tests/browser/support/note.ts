import { expect, type Page } from '@playwright/test';
import { formatFragment, parseFragment, type Fragment } from '../../../src/address/fragment.ts';
import { readQr } from './qr.ts';

export { codeFor, guide, made, to, shortest } from './codes.ts';

/** Opens the note page with a note in its address. */
export const open = (page: Page, fragment: Fragment) =>
  page.goto(`/note/#${formatFragment(fragment)}`);
/** What the address holds now. */
export const addressOf = (page: Page) => parseFragment(new URL(page.url()).hash).fragment;
/** What the tab keeps of texts in own words, as fragments. */
export const keptTexts = (page: Page) =>
  page.evaluate(() =>
    Object.entries(sessionStorage).flatMap(([key, text]) =>
      key.startsWith('hobnote.text.') ? [text as string] : [],
    ),
  );
/** The code as the page shows it, once what the page needs of the guide has come. */
export async function shownCode(page: Page): Promise<string> {
  const groups = page.locator('.code-card > .groups strong');
  await expect(groups.first()).toBeVisible();
  return (await groups.allTextContents()).join('-');
}
/** What a reader of the QR code is sent to. */
export async function qrOf(page: Page): Promise<{ path: string; fragment: Fragment }> {
  const url = new URL(await readQr(page.locator('.qr svg')));
  expect(url.origin).toBe(new URL(page.url()).origin);
  return { path: url.pathname, fragment: parseFragment(url.hash).fragment };
}
