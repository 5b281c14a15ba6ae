import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { copyOfContent, spoil } from '../content/copy.ts';

let copy = copyOfContent();
beforeEach(() => {
  copy = copyOfContent();
});
afterEach(() => {
  copy.done();
});
const run = (word: string, input = '') =>
  spawnSync(process.execPath, ['src/cli/firm.ts', word], {
    ...{ encoding: 'utf8', input, env: { ...process.env, CONTENT_DIR: copy.folder } },
  });
const file = () => readFileSync(join(copy.folder, 'firm.yaml'), 'utf8');

const ANSWERS = [
  ...['Cooker Care', 'Cooker Care', 'GB', '0113 496 0142', '+441134960142', 'the county'],
  ...['Europe/London', '08:00-17:30', '08:00-12:00', 'closed', 'Leave a message: we call back.'],
  ...['https://cooker.example', '999', '111', '01134960163', '105'],
];

it('writes who runs the copy, asked in plain words, and keeps what was there', () => {
  const before = file();
  const { status, stdout, stderr } = run('new', ANSWERS.join('\n'));
  expect([status, stdout]).toEqual([0, expect.stringContaining('Nothing is wrong')]);
  expect(stderr).toContain('digits only, for example +441134960142');
  expect(file()).toContain('name: "Cooker Care"');
  expect(readFileSync(join(copy.folder, 'firm.yaml.old'), 'utf8')).toBe(before);
});

it('writes nothing where answers are missing', () => {
  const before = file();
  expect(run('new', ANSWERS.slice(0, 5).join('\n')).status).toBe(2);
  expect(file()).toBe(before);
});

it('tells a slip with its line and what to do, and says what the slip did not touch', () => {
  const line = spoil(copy.folder, 'firm.yaml', "dial: '+12075550142'", 'dial: 207 555 0142');
  const { status, stderr } = run('check');
  expect(status).toBe(1);
  expect(stderr).toMatch(
    new RegExp(`firm\\.yaml:${String(line)}:\\d+: .*digits only, for example`),
  );
  expect(stderr).toContain('The last good build was not touched.');
});
