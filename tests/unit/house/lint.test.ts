import { ESLint } from 'eslint';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const fromRoot = (path: string) => fileURLToPath(new URL(`../../../${path}`, import.meta.url));

// Only the rules under test: type-checked rules would need the snippet to be a file of the project.
const eslint = new ESLint({
  cwd: fromRoot(''),
  overrideConfigFile: fromRoot('.config/eslint.config.mjs'),
  overrideConfig: {
    languageOptions: { parserOptions: { projectService: false, project: null } },
  },
  ruleFilter: ({ ruleId }) => !ruleId.startsWith('@typescript-eslint/'),
});

/** The rules a file with this text would break at this place. */
async function broken(filePath: string, text: string): Promise<(string | null)[]> {
  const [result] = await eslint.lintText(text, { filePath: fromRoot(filePath) });
  expect(result, `${filePath} is linted`).toBeDefined();
  return (result?.messages ?? []).map(({ ruleId, fatal, message }) =>
    fatal === true ? message : ruleId,
  );
}

const PATHS = 'import-x/no-restricted-paths';
const PACKAGES = 'no-restricted-imports';

describe('import directions', () => {
  it.each([
    ['src/guide/x.ts', "import '../cli/serve.ts';", PATHS],
    ['src/note/x.ts', "import '../cli/serve.ts';", PATHS],
    ['src/note/x.ts', "import '../physics/cooldown.ts';", PATHS],
    ['src/physics/x.ts', "import '../note/types.ts';", PATHS],
    ['src/guide/x.ts', "export * from '../note/types.ts';", PATHS],
    ['src/guide/x.ts', "export const x = () => import('../cli/serve.ts');", PATHS],
    ['src/pages/x.ts', "import '../cli/serve.ts';", PATHS],
    ['src/text/x.ts', "import '../cli/serve.ts';", PATHS],
    ['src/app/x.ts', "import '../cli/serve.ts';", PATHS],
    ['src/cli/x.ts', "import '../../tests/mutants/score.ts';", PATHS],
    ['src/note/x.ts', "import '../../tests/mutants/score.ts';", PATHS],
    ['src/result.ts', "import '../tests/mutants/score.ts';", PATHS],
    ['src/guide/x.ts', "import 'node:fs';", PACKAGES],
    ['src/note/x.ts', "import 'astro';", PACKAGES],
    ['src/diagnosis/x.ts', "import 'i18next';", PACKAGES],
    ['src/physics/x.ts', "import { createSignal } from 'solid-js';", PACKAGES],
    ['src/result.ts', "import 'node:fs';", PACKAGES],
    ['src/app/question/x.ts', "import 'zod';", PACKAGES],
    ['src/app/question/x.ts', "import 'i18next';", PACKAGES],
    ['src/app/question/x.ts', "import 'solid-js/web';", PACKAGES],
    ['src/app/x.ts', "import 'node:fs';", PACKAGES],
    ['src/guide/x.ts', "export const x = () => import('zod');", 'no-restricted-syntax'],
    ['src/guide/x.ts', 'export const x = document;', 'no-restricted-globals'],
    ['src/note/x.ts', 'export const x = process;', 'no-restricted-globals'],
    ['src/note/x.ts', "console.log('x');", 'no-console'],
    ['tests/browser/x.spec.ts', "import { test } from '@playwright/test';", PACKAGES],
  ])('reports in %s: %s', async (file, text, rule) => {
    expect(await broken(file, `${text}\n`)).toContain(rule);
  });

  it.each([
    ['src/note/x.ts', "import '../guide/types.ts';"],
    ['src/guide/x.ts', "import '../physics/cooldown.ts';"],
    ['src/guide/x.ts', "import 'zod';"],
    ['src/app/x.ts', "import '../note/types.ts';"],
    ['src/app/question/x.ts', "import '../../guide/types.ts';"],
    ['src/pages/x.ts', "import '../note/types.ts';"],
    ['src/cli/x.ts', "import 'node:fs';\nimport '../note/types.ts';\nconsole.log('x');"],
    ['tests/browser/x.spec.ts', "import { expect } from '@playwright/test';"],
  ])('says nothing in %s of: %s', async (file, text) => {
    expect(await broken(file, `${text}\n`)).toEqual([]);
  });
});
