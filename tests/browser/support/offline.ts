// With no network. Every test has an origin of its own: the server is really gone, not emulated so.
import { rm } from 'node:fs/promises';
import type { BrowserContext, Page } from '@playwright/test';
import { keepOffline } from '../../../src/site/build/keep-offline.ts';
import { expect, siteDir, test as base } from './fixtures.ts';
import { makeOrigin, type Origin } from './origin.ts';
import { bundlesOf, copyOf } from './releases.ts';
import { watch } from './watch.ts';

export { kept } from './releases.ts';

export interface Place {
  readonly origin: Origin;
  readonly context: BrowserContext;
  readonly page: Page;
}

/** A phone at an origin of its own, nothing kept yet. */
export const test = base.extend<
  { place: Place; whole: boolean; saves: boolean; expects: RegExp[] },
  { small: string }
>({
  small: [
    async ({}, use) => {
      // Its pages say other bundles than their compressed copies.
      const small = await copyOf(/\.(?:br|gz)$/);
      await keepOffline(small);
      await use(small);
      await rm(small, { recursive: true });
    },
    { scope: 'worker' },
  ],
  whole: [false, { option: true }],
  saves: [false, { option: true }],
  /** What the browser says of its own accord when a download fails or the network is off. */
  expects: [[], { option: true }],
  place: async ({ browser, small, whole, saves, expects }, use) => {
    const origin = await makeOrigin(whole ? siteDir() : small);
    const context = await browser.newContext({ baseURL: origin.url, serviceWorkers: 'allow' });
    const found = await watch(context, origin.url);
    if (saves)
      await context.addInitScript(() => {
        Object.defineProperty(navigator, 'connection', { value: { saveData: true } });
      });
    await use({ origin, context, page: await context.newPage() });
    await context.close();
    await origin.close();
    const problems = found.verdict().filter((text) => !expects.some((one) => one.test(text)));
    expect(problems, 'nothing goes wrong in the browser').toEqual([]);
  },
});

/** What is kept of the first copy, and of what a worker remembers its addresses' beginning alone. */
export const cached = (page: Page) =>
  page.evaluate(async () => {
    const [name] = await caches.keys();
    const keys = name === undefined ? [] : await (await caches.open(name)).keys();
    return keys.map(({ url }) => new URL(url).pathname.slice(1));
  });
export const state = (page: Page) =>
  page.evaluate(async () => {
    const registration = await navigator.serviceWorker.getRegistration();
    return {
      installing: Boolean(registration?.installing),
      waiting: Boolean(registration?.waiting),
      active: Boolean(registration?.active),
    };
  });
export const NONE = { installing: false, waiting: false, active: false };
export const DOWN = [/ERR_CONNECTION|ERR_EMPTY_RESPONSE|ERR_FAILED|Failed to fetch/];

/** Addresses of all files that are kept. */
export const list = async (dir: string): Promise<string[]> =>
  [...(await bundlesOf(dir)).values()].flatMap(({ files }) => files.map(([path]) => path));
