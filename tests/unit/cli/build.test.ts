// A build that fails leaves the last good one as it was.
import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { buildAside } from '../../../src/cli/build.ts';

let top = '';
let site = '';
beforeEach(() => {
  top = mkdtempSync(join(tmpdir(), 'aside-'));
  site = join(top, 'dist');
  mkdirSync(site);
  writeFileSync(join(site, 'index.html'), 'the last good one');
});
afterEach(() => {
  rmSync(top, { recursive: true });
});
const shown = () => readFileSync(join(site, 'index.html'), 'utf8');
const write = (text: string, status: number) => (folder: string) => {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'index.html'), text);
  return status;
};

it('a build that fails midway leaves the site as it was, and nothing beside it', () => {
  expect(buildAside(site, write('half a page', 1))).toBe(1);
  expect(shown()).toBe('the last good one');
  expect(existsSync(`${site}.next`)).toBe(false);
});

it('a whole one takes its place, and takes nothing of an earlier half one along', () => {
  mkdirSync(`${site}.next`);
  writeFileSync(join(`${site}.next`, 'stale.html'), 'of a build that was killed');
  expect(buildAside(site, write('new', 0))).toBe(0);
  expect(shown()).toBe('new');
  for (const path of [`${site}.next`, `${site}.last`, join(site, 'stale.html')])
    expect(existsSync(path), path).toBe(false);
});

it('is how `npm run build` builds', () => {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8')) as {
    readonly scripts: Readonly<Record<string, string>>;
  };
  expect(scripts['build']).toBe('node src/cli/build.ts');
});
