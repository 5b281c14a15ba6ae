import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, describe, expect, it } from 'vitest';
import { REPORT_FILE, tally } from '../../../.config/line-report.ts';

const lines = (...all: object[]) => all.map((line) => `${JSON.stringify(line)}\n`).join('');

describe('a report of tests, line by line', () => {
  const whole = lines(
    { id: 'a', name: 'first' },
    { id: 'a', name: 'first', outcome: 'passed', retries: 0 },
    { id: 'b', name: 'second' },
    { id: 'b', name: 'second', outcome: 'failed', retries: 0 },
    { id: 'c', name: 'third', outcome: 'skipped', retries: 0, why: 'no nginx' },
  );

  it('is counted', () => {
    expect(tally(whole)).toEqual({
      counts: { passed: 1, failed: 1, skipped: 1 },
      ...{ retries: 0, running: [], skips: new Map([['no nginx', 1]]) },
    });
  });

  it('counts no test where there is none', () => {
    expect(tally('').counts).toEqual({ passed: 0, failed: 0, skipped: 0 });
  });

  it('cut off at any byte counts what had ended and names what was running', () => {
    const counted = Array.from(whole, (_, at) => tally(whole.slice(0, at)));
    const ends = [...whole.matchAll(/"outcome".*\n/g)].map(
      ({ index, 0: end }) => index + end.length,
    );
    for (const [at, { counts, running }] of counted.entries()) {
      const sum = counts.passed + counts.failed + counts.skipped;
      // A line is whole with its closing brace, one byte before the line's end.
      expect(sum, `${at} bytes`).toBe(ends.filter((end) => end - 1 <= at).length);
      expect(running.length).toBeLessThanOrEqual(1);
    }
    expect(counted.some(({ running }) => running[0] === 'second')).toBe(true);
  });

  it('counts a test as ended though its beginning was told late, as vitest may under load', () => {
    const [begun = '', ended = ''] = whole.split(/(?<=\n)/);
    expect(tally(ended + begun)).toMatchObject({ counts: { passed: 1 }, running: [] });
  });

  it('counts each further try, and the last one as the outcome', () => {
    const tried = (outcome: string, retries: number) => ({ id: 'a', name: 'a', outcome, retries });
    expect(tally(lines(tried('failed', 0), tried('passed', 1)))).toMatchObject({
      ...{ counts: { passed: 1, failed: 0 }, retries: 1 },
    });
    expect(tally(lines(tried('failed', 0), tried('failed', 1), tried('failed', 2)))).toMatchObject({
      ...{ counts: { passed: 0, failed: 1 }, retries: 2 },
    });
  });
});

describe('the reporter', () => {
  const root = fileURLToPath(new URL('../../..', import.meta.url));
  const folder = mkdtempSync(join(tmpdir(), 'report-'));
  afterAll(() => {
    rmSync(folder, { recursive: true });
  });

  it('has written down, when vitest dies in a test, what had ended and what was running', () => {
    const file = join(folder, 'lines');
    writeFileSync(
      join(folder, 'dies.test.ts'),
      `import { expect, it } from 'vitest';
       it('adds', () => expect(1 + 1).toBe(2));
       it('fails', () => expect(1).toBe(2));
       it('waits', ({ skip }) => skip('not today'));
       let tries = 0;
       it('is tried again', { retry: 1 }, () => expect((tries += 1)).toBe(2));
       it('kills', async () => {
         await new Promise((done) => setTimeout(done, 1000));
         process.kill(process.ppid, 'SIGKILL');
         await new Promise(() => {});
       });`,
    );
    const vitest = join(root, 'node_modules/vitest/vitest.mjs');
    const reporter = `--reporter=${join(root, '.config/line-report.ts')}`;
    const { signal } = spawnSync(
      process.execPath,
      [vitest, 'run', '--root', folder, '--pool=forks', reporter],
      { env: { ...process.env, [REPORT_FILE]: file }, encoding: 'utf8' },
    );
    expect(signal).toBe('SIGKILL');
    expect(tally(readFileSync(file, 'utf8'))).toEqual({
      counts: { passed: 2, failed: 1, skipped: 1 },
      ...{ retries: 1, running: ['kills'], skips: new Map([['not today', 1]]) },
    });
  });
});
