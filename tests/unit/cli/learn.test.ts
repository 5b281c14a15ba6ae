import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, test } from 'vitest';
import { loadModel } from '../../../src/diagnosis/load.ts';
import type { RecordedVisit } from '../../../src/diagnosis/visits-schema.ts';
import { logOf } from '../diagnosis/support/logs.ts';
import { realContext, realFiles } from '../diagnosis/support/real.ts';
import { here } from './here.ts';

const folder = mkdtempSync(join(tmpdir(), 'learn-'));
afterAll(() => rmSync(folder, { recursive: true }));

function put(name: string, text: string): string {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
}

/** A folder of the published figures, changed where asked. */
function putModel(name: string, change = (text: string): string => text): string {
  mkdirSync(join(folder, name));
  for (const { file, source } of realFiles) put(join(name, file), change(source));
  return join(folder, name);
}

const modelAt = (path: string) =>
  realFiles.map(({ file }) => ({ file, source: readFileSync(join(path, file), 'utf8') }));

function putVisits(name: string, visits: readonly RecordedVisit[], guide = 'door-locked'): string {
  return put(name, JSON.stringify({ format: 'hobnote-visits', version: 1, guide, visits }));
}

const learn = (...words: readonly string[]) => here('src/cli/learn.ts', ...words);

interface Json {
  readonly visits: number;
  readonly unlisted: number;
  readonly better: boolean;
  readonly heldOut: { readonly gain: number; readonly visits: number };
  readonly changes: readonly unknown[];
  readonly written?: string;
}

const complaints = [
  ...['burner', 'clean-wont-start', 'door-locked', 'error-shows'],
  ...['melted-smoke', 'no-heat', 'wrong-temperature'],
];

const wrong = logOf(800, 2, 11, 1);
const others = wrong.filter(({ fault }) => fault === 'other').length;
const wrongTables = putVisits('wrong.json', wrong);

describe('npm run learn', () => {
  test('tells the scores and the changes, and writes nothing unasked', () => {
    const model = putModel('unasked');
    const command = ['src/cli/learn.ts', wrongTables, '--model', model];
    const done = spawnSync(process.execPath, command, { encoding: 'utf8' });
    const { status, stdout: out, stderr } = done;
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    expect(out).toContain('800 visits of door-locked');
    expect(out).toMatch(/learned figures +−\d\.\d{4} +\d\.\d{4}/);
    expect(out).toMatch(/How often each fault is behind a call \(800 visits;/);
    expect(out).toMatch(/Latch hook, rod or linkage .*: [\d.]+ % → [\d.]+ %/);
    expect(out).toMatch(
      /What callers answer to “.+” \(display\): .+, \d+ visits:\n +“.+”: [\d.]+ %/,
    );
    expect(out).toMatch(/said 40 % to 50 % .*: right in \d+ of \d+, \d+ % \(\d+ % to \d+ %\)/);
    expect(out).toContain('part 4, 200 visits');
    expect(out).toContain('Nothing written: add --write');
    expect(modelAt(model)).toEqual(realFiles);
  });

  // Every guide has visits that a firm may learn from.
  test.each(complaints)('--write after visits of %s changes figures only', async (guide) => {
    const model = putModel(`asked-${guide}`);
    const visits = putVisits(`${guide}.json`, logOf(600, 3, 11, 1, guide), guide);
    const { status, out } = await learn(visits, '--model', model, '--write');
    expect(status).toBe(0);
    expect(out).toContain(`Written to ${model}`);
    const after = modelAt(model);
    const words = (files: typeof after) =>
      files.map(({ source }) => source.replace(/\b[01](\.\d+)?\b/g, '#'));
    expect(after).not.toEqual(realFiles);
    expect(words(after)).toEqual(words(realFiles));
    expect(loadModel(after, realContext()).ok).toBe(true);
  });

  test('where the figures are right already, --write writes nothing', async () => {
    const model = putModel('right');
    const visits = putVisits('right.json', logOf(400, 1, 1, 1));
    const { status, out } = await learn(visits, '--model', model, '--write');
    expect(status).toBe(0);
    expect(out).toContain('keep the figures as they are');
    expect(modelAt(model)).toEqual(realFiles);
  });

  test('--json, several files, other faults', async () => {
    const other = putVisits('other.json', [{ answers: {}, fault: 'other', parts: [] }]);
    const { status, out } = await learn(wrongTables, other, '--json');
    expect(status).toBe(0);
    const found = JSON.parse(out) as Json;
    expect(found).toMatchObject({
      ...{ visits: 801, unlisted: 1 + others, better: true, heldOut: { visits: 801 } },
    });
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
    [
      'another folder',
      [putVisits('guide.json', []), '--model', join(folder, 'nowhere')],
      'There are no figures to read',
    ],
    [
      'an unknown fault',
      [putVisits('gremlin.json', [{ answers: {}, fault: 'gremlin', parts: [] }])],
      'Visit 1 names the fault "gremlin"',
    ],
    [
      'figures with a slip',
      [
        wrongTables,
        '--model',
        putModel('slip', (text) => text.replace('prior: 0.05', 'prior: 0.15')),
      ],
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
