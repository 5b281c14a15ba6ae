import { readdirSync } from 'node:fs';
import { relative, sep } from 'node:path';
import type { Locator, Page } from '@playwright/test';
import { languages } from '../../../src/content/load.ts';
import { FRONT_PAGE } from '../../../src/site/build/front-pages.ts';

/** "For all" means something: an empty list is a mistake. */
function some<T>(found: T[], what: string): T[] {
  if (found.length === 0) throw new Error(`there are no ${what}`);
  return found;
}

/**
 * Addresses of all pages of a built site, from its root, sorted: `/`, `/about/`, `/404.html`.
 * First pages made to be chosen from have none of their own.
 */
export function pagesOf(dist: string): string[] {
  const pages = readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter(({ name }) => name.endsWith('.html') && !FRONT_PAGE.test(name))
    .map((entry) => {
      const folder = relative(dist, entry.parentPath).split(sep).filter(Boolean);
      return `/${[...folder, entry.name].join('/')}`.replace(/(?<=\/)index\.html$/, '');
    })
    .toSorted();
  return some(pages, `pages in ${dist}`);
}

/** Whether a file or page of the site is only another language's than the first one's. */
export function isForeign(path: string): boolean {
  const [, ...others] = languages();
  return path.split(/[/\\]/).some((part) => others.includes(part));
}

/** The same without files that are no folder's own page, such as the 404 page. */
export function readablePagesOf(dist: string): string[] {
  return pagesOf(dist).filter((path) => path.endsWith('/'));
}

/** The guides of a built site: they are the folders with a danger question. */
export function guidesIn(dist: string): string[] {
  const guides = pagesOf(dist).flatMap((path) => /^\/([\w-]+)\/danger\/$/.exec(path)?.[1] ?? []);
  return some(guides, `guides in ${dist}`);
}

/** Pages of one guide: questions, steps, stops and finishes. */
export function guidePagesOf(dist: string, guide = 'door-locked'): string[] {
  const pages = pagesOf(dist).filter((path) => path.startsWith(`/${guide}/`));
  return some(pages, `pages of ${guide}`);
}

/** A question or step, and the answer given there. */
export type Answered = readonly [node: string, answer: string];

/** The link that gives an answer. */
export const answerLink = (page: Page, answer: string) =>
  page.locator(`main a[data-answer="${answer}"]`);

/**
 * Gives an answer as a reader does who means it: twice where the page asks for that, which takes its
 * script; only then the link says in which guide the journey began.
 */
export async function giveAnswer(
  link: Locator,
  use: (link: Locator) => Promise<unknown> = (to) => to.click(),
): Promise<void> {
  const asks = (await link.getAttribute('data-confirm')) !== null;
  // A tap before the script has run leads on at once; after it, it asks.
  if (asks) await link.page().waitForLoadState();
  const scripted = /[#&]g=/.test((await link.getAttribute('href')) ?? '');
  await use(link);
  if (asks && scripted) await use(link);
}

/**
 * Follows a guide by clicking, from the page of the first node on, checking at every step that the
 * guide stands where the walk says it does. Leaves the page at what follows the last answer.
 *
 * @param patience milliseconds a page may take to come: a guard against a hang
 */
export async function walkGuide(
  page: Page,
  answers: readonly Answered[],
  guide = 'door-locked',
  patience = 60_000,
): Promise<void> {
  // A node of another guide has that guide's name before it.
  const at = (node: string) => (node.includes('/') ? `/${node}/` : `/${guide}/${node}/`);
  const [first] = answers;
  if (first === undefined) throw new Error('a walk needs an answer');
  if (new URL(page.url(), 'about:blank').pathname !== at(first[0])) await page.goto(at(first[0]));
  const arrive = (right: (path: string) => boolean, what: string) =>
    // Module scripts run before this event: what a page keeps is then kept.
    page
      .waitForURL((url) => right(url.pathname), {
        waitUntil: 'domcontentloaded',
        timeout: patience,
      })
      .catch(() => {
        throw new Error(`${what}, not at ${page.url()}`);
      });
  for (const [index, [node, answer]] of answers.entries()) {
    const what = `answer ${String(index + 1)} (${answer}) is asked at ${at(node)}`;
    await arrive((path) => path === at(node), what);
    await giveAnswer(answerLink(page, answer));
  }
  const last = answers.at(-1);
  if (last) await arrive((path) => path !== at(last[0]), `the last answer leads on`);
}
