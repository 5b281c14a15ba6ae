import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** The same journeys in other engines than Chromium, on the built site. */
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/engines/**/*.test.ts'],
    globalSetup: [fileURLToPath(new URL('./serve-for-tests.ts', import.meta.url))],
    passWithNoTests: false,
    // Where the driver, not the page, fell silent: under load WebKit's may; in CI whatever failed. The
    // run shows it.
    retry: { count: 1, ...(process.env['CI'] === undefined && { condition: /^no answer/ }) },
    testTimeout: 240_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
  },
});
