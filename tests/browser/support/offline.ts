// With no network. Every test has an origin of its own: the server is really gone, not emulated so.
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { BrowserContext, Page } from '@playwright/test';
import { keepOffline } from '../../../src/site/build/keep-offline.ts';
import { expect, siteDir, test as base } from './fixtures.ts';
import { makeOrigin, type Origin } from './origin.ts';
import { copyOf } from './releases.ts';
import { watch } from './watch.ts';

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
      const small = await copyOf();
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

/** Resolves once a release is kept and in use. */
export const kept = (page: Page) =>
  page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
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

interface List {
  readonly files: Readonly<Record<string, string>>;
}
export const list = async (dir: string) =>
  JSON.parse(await readFile(join(dir, 'precache.json'), 'utf8')) as List;
