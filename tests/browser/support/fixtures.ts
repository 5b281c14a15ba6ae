import { test as base, expect } from '@playwright/test';
import { watch, type Watch } from './watch.ts';

/** A part of the environment that must be there, with what to do when it is not. */
function fromSetup(name: string): string {
  const value = process.env[name];
  if (value === undefined)
    throw new Error(`${name} is not set: start with .config/playwright.config.ts`);
  return value;
}

/** Address of the site under test, a slash at its end. */
export const siteUrl = (): string => fromSetup('SITE_URL');

/** Folder of the built site under test. */
export const siteDir = (): string => fromSetup('SITE_DIR');

/** A large screen, for what is another thing there: a phone is what all tests have else. */
export const DESK = {
  viewport: { width: 1280, height: 800 },
  isMobile: false,
  hasTouch: false,
} as const;

/** A screen as fine as phones have, for square codes that are read off it. */
export const FINE = { deviceScaleFactor: 3 } as const;

/**
 * Playwright's test, watched: it fails when the console shows an error or a warning, when anything
 * is thrown, blocked by policy or not found, and when a request leaves the site. A test that means
 * to cause one of these says so first: `watched.expect(/answered 404/)`.
 */
export const test = base.extend<{ watched: Watch }>({
  baseURL: async ({}, use) => use(siteUrl()),
  watched: [
    async ({ context }, use) => {
      const watched = await watch(context, siteUrl());
      await use(watched);
      expect(watched.verdict(), 'nothing goes wrong in the browser').toEqual([]);
    },
    { auto: true },
  ],
});

export { expect };
