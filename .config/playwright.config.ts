import { fileURLToPath } from 'node:url';
import { defineConfig } from '@playwright/test';
import { CHROMIUM_FLAGS, chromium } from './browsers.ts';

const fromRoot = (path: string) => fileURLToPath(new URL(`../${path}`, import.meta.url));

export default defineConfig({
  testDir: fromRoot('tests/browser'),
  outputDir: fromRoot('test-results'),
  globalSetup: fileURLToPath(new URL('./serve-for-tests.ts', import.meta.url)),
  snapshotPathTemplate: '{testDir}/snapshots/{testFileName}/{arg}{ext}',
  workers: 2,
  fullyParallel: true,
  forbidOnly: true,
  // In CI a test that fails is tried once more; the table at the end counts it, so none hides.
  retries: process.env['CI'] === undefined ? 0 : 1,
  // Guards against a hang, not measures of speed: one busy core is slow, not wrong.
  timeout: 300_000,
  expect: { timeout: 30_000 },
  reporter: process.env['CI'] === undefined ? 'list' : 'dot',
  use: {
    browserName: 'chromium',
    locale: 'en-US',
    timezoneId: 'America/Chicago',
    // Every test is a first visit; only tests of what is kept let the rest be downloaded.
    serviceWorkers: 'block',
    launchOptions: { executablePath: chromium(), args: CHROMIUM_FLAGS },
    // A phone. Tests of what is another thing on a large screen ask for DESK (support/fixtures.ts).
    viewport: { width: 360, height: 740 },
    hasTouch: true,
    isMobile: true,
  },
});
