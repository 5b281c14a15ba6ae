import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { CHROMIUM_FLAGS, chromium } from './browsers.ts';

const fromRoot = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

export default defineConfig({
  testDir: fromRoot('tests/browser'),
  outputDir: fromRoot('test-results'),
  globalSetup: fileURLToPath(new URL('./serve-for-tests.ts', import.meta.url)),
  snapshotPathTemplate: '{testDir}/snapshots/{testFileName}/{arg}-{projectName}{ext}',
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  retries: 0,
  timeout: 60_000,
  // A machine that runs two browsers and a build of its own is slow, not wrong.
  expect: { timeout: 15_000 },
  reporter: process.env['CI'] === undefined ? 'list' : 'dot',
  use: {
    browserName: 'chromium',
    locale: 'en-US',
    timezoneId: 'America/Chicago',
    // Every test is a first visit; only tests of what is kept let the rest be downloaded.
    serviceWorkers: 'block',
    launchOptions: { executablePath: chromium(), args: CHROMIUM_FLAGS },
  },
  projects: [
    {
      name: 'phone',
      use: {
        viewport: { width: 360, height: 740 },
        deviceScaleFactor: 3,
        hasTouch: true,
        isMobile: true,
      },
    },
    { name: 'desk', use: { viewport: { width: 1280, height: 800 } } },
  ],
});
