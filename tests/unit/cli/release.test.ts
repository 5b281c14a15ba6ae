import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { releases } from '../../../src/content/load.ts';
import { copyOfContent } from '../content/copy.ts';

const cli = fileURLToPath(new URL('../../../src/cli/release.ts', import.meta.url));
const newest = releases().length;
let copy = copyOfContent();
beforeEach(() => {
  copy = copyOfContent();
});
afterEach(() => {
  copy.done();
});

function run(...options: readonly string[]) {
  const env = { ...process.env, CONTENT_DIR: copy.folder };
  const { status, stdout, stderr } = spawnSync(process.execPath, [cli, ...options], {
    ...{ env, encoding: 'utf8' },
  });
  const recall: unknown = JSON.parse(readFileSync(join(copy.folder, 'recall.json'), 'utf8'));
  return { status, told: stdout + stderr, recall };
}

it('recalls a release, then a page twice, one of today and one of an old release', () => {
  expect(run('--recall', String(newest))).toMatchObject({
    ...{ status: 0, recall: { least: newest, pages: [] } },
  });
  const page = ['--page', '/door-locked/near/'];
  expect(run(...page, ...page).recall).toEqual({
    ...{ least: newest, pages: ['/door-locked/near/', '/door-locked/near/'] },
  });
  const last = run('--page', '/door-locked/', '--page', '/door-locked/forced/');
  expect(last.told).toContain('the next build you publish');
  expect(last.recall).toMatchObject({ least: newest });
});

it.each([
  [['--recall', String(newest + 1)], `There is no release ${String(newest + 1)}`],
  [['--recall', 'newest'], '--recall 6'],
  [['--recall', '1.5'], '--recall 6'],
  [['--page', '/door-locked/wink/'], 'No release has or had a page /door-locked/wink/'],
  [['--page', 'door-locked/near'], '--page /guide/page/'],
  [['--recal', '5'], 'npm run release'],
])('refuses %j and writes nothing', (options, told) => {
  const result = run(...options);
  expect(result.status).toBe(2);
  expect(result.told).toContain(told);
  expect(result.told).not.toMatch(/^ {4}at /m);
  expect(result.recall).toEqual({ least: 1, pages: [] });
});

it('never takes a recall back', () => {
  run('--recall', String(newest));
  expect(run('--recall', '1').status).toBe(2);
  expect(run().recall).toEqual({ least: newest, pages: [] });
});
