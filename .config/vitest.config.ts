import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: fileURLToPath(new URL('..', import.meta.url)),
  // In Node the package resolves to its server build, in which nothing reacts.
  resolve: {
    alias: [
      {
        find: /^solid-js$/,
        replacement: fileURLToPath(
          new URL('../node_modules/solid-js/dist/solid.js', import.meta.url),
        ),
      },
    ],
  },
  test: {
    include: ['tests/{unit,reference,vectors}/**/*.test.ts'],
    setupFiles: [fileURLToPath(new URL('./quiet-console.ts', import.meta.url))],
    passWithNoTests: false,
    // What tests read from the disk is in no module's imports: `--changed` would not see it.
    forceRerunTriggers: [
      ...['content/**', '.config/**', 'package*.json'],
      ...['src/**/*.{astro,css,svg,yaml}', 'tests/vectors/**/*.json'],
    ],
    restoreMocks: true,
    // Files share their workers, and what these have loaded: no test leaves anything behind it that
    // another could see. `--sequence.shuffle` tells whether that still holds.
    isolate: false,
    // A guard against a hang, not a measure of speed: whole sweeps may share two cores with much else.
    testTimeout: 900_000,
    hookTimeout: 900_000,
    maxWorkers: 2,
  },
});
