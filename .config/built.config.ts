// Tests of the built site's files, without a browser: build first, then
// npx vitest run --config .config/built.config.ts
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  test: {
    include: ['tests/built/**/*.test.ts'],
    passWithNoTests: false,
    // A guard against a hang: every page of every language is read.
    testTimeout: 300_000,
    hookTimeout: 300_000,
    maxWorkers: 2,
  },
});
