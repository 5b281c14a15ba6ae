import { expect, type Page } from '@playwright/test';
import { formatFragment, parseFragment, type Fragment } from '../../../src/guide/fragment.ts';
import { dayOf } from '../../../src/note/day.ts';
import { writeCode } from '../../../src/note/write.ts';
import { library, newest } from './books.ts';
import { readQr } from './qr.ts';
import { doorLocked, shortestWays } from './ways.ts';

export const guide = doorLocked();
export const ways = shortestWays(guide);
/** The day of all these notes. */
export const made = '2026-11-25';

/** A note whose journey leads to a node by a shortest way. */
export function to(node: string, parts: Partial<Fragment> = {}): Fragment {
  const journey = ways.get(node as never);
  if (!journey) throw new Error(`no way to ${node}`);
  return { journey, details: {}, made, ...parts };
}

/** The code as the command line would write it. */
export function codeFor({ journey, details, error = '', made: on = made }: Fragment): string {
  const day = dayOf(new Date(`${on}T00:00:00Z`));
  const written = writeCode(
    { release: newest, guide: guide.id, journey, day, details, error },
    library,
  );
  if (!written.ok) throw new Error(JSON.stringify(written.error));
  return written.value;
}

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
