import eslint from '@eslint/js';
import { createTypeScriptImportResolver } from 'eslint-import-resolver-typescript';
import astro from 'eslint-plugin-astro';
import { importX } from 'eslint-plugin-import-x';
import solid from 'eslint-plugin-solid/configs/typescript';
import { defineConfig } from 'eslint/config';
import { fileURLToPath } from 'node:url';
import tseslint from 'typescript-eslint';
import { directions, packages, pureFiles } from './imports.mjs';

const root = fileURLToPath(new URL('..', import.meta.url));

export default defineConfig(
  {
    ignores: [
      ...['dist/', 'dist.*/', '.astro/', 'test-results/', 'node_modules/'],
      // Its packages are there only once its benchmark has run, which checks its types.
      'tests/bench/side-by-side/react.ts',
    ],
  },
  { linterOptions: { reportUnusedDisableDirectives: 'error' } },
  eslint.configs.recommended,
  {
    files: ['**/*.{ts,tsx}'],
    extends: [tseslint.configs.strictTypeChecked, tseslint.configs.stylisticTypeChecked],
    languageOptions: { parserOptions: { projectService: true, tsconfigRootDir: root } },
    rules: {
      '@typescript-eslint/consistent-type-imports': 'error',
      '@typescript-eslint/restrict-template-expressions': ['error', { allowNumber: true }],
      '@typescript-eslint/no-unused-vars': [
        'error',
        { argsIgnorePattern: '^_', varsIgnorePattern: '^_', ignoreRestSiblings: true },
      ],
      // It asks for what no-non-null-assertion forbids.
      '@typescript-eslint/non-nullable-type-assertion-style': 'off',
      // Text is taken apart by code points on purpose: codes and displays hold single symbols.
      '@typescript-eslint/no-misused-spread': 'off',
      '@typescript-eslint/no-confusing-void-expression': [
        'error',
        { ignoreArrowShorthand: true, ignoreVoidOperator: true },
      ],
      // noPropertyAccessFromIndexSignature of the type checker asks for the opposite.
      '@typescript-eslint/dot-notation': 'off',
    },
  },
  astro.configs.recommended,
  {
    files: ['**/*.astro'],
    languageOptions: { parserOptions: { parser: tseslint.parser } },
    rules: {
      // TypeScript finds these, and knows the names Astro adds.
      'no-undef': 'off',
      'no-unused-vars': 'off',
      'astro/no-set-html-directive': 'error',
    },
  },
  { files: ['src/app/**/*.tsx'], extends: [solid] },
  {
    files: ['src/**/*.{ts,tsx,astro,mjs}'],
    plugins: { 'import-x': importX },
    settings: {
      'import-x/resolver-next': [
        createTypeScriptImportResolver({ project: `${root}tsconfig.json` }),
      ],
      'import-x/parsers': { '@typescript-eslint/parser': ['.ts', '.tsx'] },
    },
    rules: {
      'import-x/no-restricted-paths': ['error', { basePath: root, zones: directions }],
      'import-x/no-cycle': 'error',
    },
  },
  ...packages.map(({ files, ignores = [], group, message }) => ({
    name: message,
    files,
    ignores,
    rules: { 'no-restricted-imports': ['error', { patterns: [{ group, message }] }] },
  })),
  {
    files: pureFiles,
    rules: {
      'no-restricted-syntax': [
        'error',
        { selector: 'ImportExpression', message: 'Pure code loads nothing by itself.' },
      ],
      'no-restricted-globals': [
        'error',
        ...['window', 'document', 'navigator', 'location', 'history', 'localStorage'].map(
          (name) => ({ name, message: 'Pure code knows no browser.' }),
        ),
        ...['process', 'Buffer', '__dirname', '__filename'].map((name) => ({
          name,
          message: 'Pure code knows no Node.',
        })),
      ],
    },
  },
  {
    files: ['**/*.{ts,tsx,astro,mjs}'],
    rules: {
      'no-console': 'error',
      eqeqeq: 'error',
    },
  },
  {
    // Every benchmark returns a promise, whether it has to wait for something or not.
    files: ['tests/bench/**'],
    rules: { '@typescript-eslint/require-await': 'off' },
  },
  {
    files: ['src/cli/**', 'tests/{bench,browser,built,eyes,mutants,safety}/**', '.config/**'],
    rules: { 'no-console': 'off' },
  },
  {
    files: ['tests/browser/**/*.ts'],
    ignores: ['tests/browser/support/**'],
    rules: {
      'no-restricted-imports': [
        'error',
        {
          paths: [
            {
              name: '@playwright/test',
              importNames: ['test'],
              message:
                'Take test from support/fixtures.ts: it watches the console and the network.',
            },
          ],
        },
      ],
    },
  },
  {
    files: ['tests/browser/**/*.ts'],
    // Playwright reads what a test needs off its parameter; it may need nothing.
    rules: { 'no-empty-pattern': 'off' },
  },
  {
    files: ['**/*.mjs'],
    languageOptions: { globals: { console: 'readonly', process: 'readonly', URL: 'readonly' } },
  },
);
