import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { loadModel } from '../../../src/diagnosis/load.ts';
import type { RecordedVisit } from '../../../src/diagnosis/visits-schema.ts';
import { logOf } from '../diagnosis/support/logs.ts';
import { realContext, realFaults } from '../diagnosis/support/real.ts';
import { here } from './here.ts';

const folder = mkdtempSync(join(tmpdir(), 'learn-'));
afterAll(() => rmSync(folder, { recursive: true }));

function put(name: string, text: string): string {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
}

function putVisits(name: string, visits: readonly RecordedVisit[], guide = 'door-locked'): string {
  return put(name, JSON.stringify({ format: 'hobnote-visits', version: 1, guide, visits }));
}

const learn = (...words: readonly string[]) => here('src/cli/learn.ts', ...words);

interface Json {
  readonly visits: number;
  readonly other: number;
  readonly better: boolean;
  readonly heldOut: { readonly gain: number; readonly visits: number };
  readonly changes: readonly unknown[];
  readonly written?: string;
}

const wrongTables = putVisits('wrong.json', logOf(800, 2, 11, 1));

describe('npm run learn', () => {
  test('tells the scores and the changes, and writes nothing unasked', () => {
    const faults = put('unasked.yaml', realFaults);
    const command = ['src/cli/learn.ts', wrongTables, '--faults', faults];
    const done = spawnSync(process.execPath, command, { encoding: 'utf8' });
    const { status, stdout: out, stderr } = done;
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(out).toContain('800 visits of door-locked');
    expect(out).toMatch(/learned figures +−\d\.\d{4} +\d\.\d{4}/);
    expect(out).toMatch(/priors \(800 visits\): .*sensor 0\.035 → 0\.\d+/);
    expect(out).toContain('Nothing written: add --write');
    expect(readFileSync(faults, 'utf8')).toBe(realFaults);
  });

  test('--write changes figures only: every word and line stays, and the file loads', async () => {
    const faults = put('asked.yaml', realFaults);
    const { status, out } = await learn(wrongTables, '--faults', faults, '--write');
    expect(status).toBe(0);
    expect(out).toContain(`Written to ${faults}`);
    const after = readFileSync(faults, 'utf8');
    expect(after).not.toBe(realFaults);
    const words = (text: string) => text.replace(/\b0\.\d+\b/g, '#');
    expect(words(after)).toBe(words(realFaults));
    expect(loadModel(after, 'asked.yaml', realContext()).ok).toBe(true);
  });

  test('where the figures are right already, --write writes nothing', async () => {
    const faults = put('right.yaml', realFaults);
    const visits = putVisits('right.json', logOf(400, 1, 1, 1));
    const { status, out } = await learn(visits, '--faults', faults, '--write');
    expect(status).toBe(0);
    expect(out).toContain('keep the figures as they are');
    expect(readFileSync(faults, 'utf8')).toBe(realFaults);
  });

  test('--json, several files, other faults', async () => {
    const other = putVisits('other.json', [{ answers: {}, fault: 'other', parts: [] }]);
    const { status, out } = await learn(wrongTables, other, '--json');
    expect(status).toBe(0);
    const found = JSON.parse(out) as Json;
    expect(found).toMatchObject({ visits: 801, other: 1, better: true, heldOut: { visits: 800 } });
    expect(found.heldOut.gain).toBeGreaterThan(0);
    expect(found.changes.length).toBeGreaterThan(10);
    expect(found.written).toBeUndefined();
  });

  test('too few visits: says so', async () => {
    const few = putVisits('few.json', [{ answers: {}, fault: 'sensor', parts: ['sensor'] }]);
    expect(await learn(few)).toMatchObject({
      status: 0,
      out: expect.stringContaining('Too few') as string,
    });
  });

  test.each([
    ['no file', [], 'Use:'],
    ['a file that is not there', [join(folder, 'nowhere.json')], 'no such file'],
    ['no JSON', [put('broken.json', '{')], 'not JSON'],
    ['another form', [put('shape.json', '{}')], 'public/schema/visits.json'],
    ['another guide', [putVisits('guide.json', [], 'no-such-guide')], 'no such file'],
    [
      'two guides',
      [putVisits('a.json', []), putVisits('b.json', [], 'other-guide')],
      'one guide at a time',
    ],
    [
      'an unknown fault',
      [putVisits('gremlin.json', [{ answers: {}, fault: 'gremlin', parts: [] }])],
      'Visit 1 names the fault "gremlin"',
    ],
    [
      'figures with a slip',
      [wrongTables, '--faults', put('slip.yaml', realFaults.replace('prior: 0.35', 'prior: 0.45'))],
      'priors-do-not-sum-to-one',
    ],
    ['a strength of none', [wrongTables, '--strength', '0'], '--strength takes'],
    ['an unknown option', [wrongTables, '--guess'], 'Use:'],
  ])('%s: status 2, and what to do', async (_, words, told) => {
    const { status, out, err } = await learn(...words);
    expect({ status, out }).toEqual({ status: 2, out: '' });
    expect(err).toContain(told);
  });
});
