import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

/** What holds of the built site without a browser: its files, and how hosts give them. */
export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/built/**/*.test.ts'],
    passWithNoTests: false,
    // Guards against a hang, not measures of speed.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: 2,
  },
});
