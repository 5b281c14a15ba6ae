import { spawnSync } from 'node:child_process';
import { describe, expect, test } from 'vitest';
import { currentCodebooks } from '../../../src/content/codebooks.ts';
import type { CurrentCodebooks } from '../../../src/content/codebooks.ts';
import { content } from '../../../src/content/load.ts';
import { inRoot } from '../../../src/cli/root.ts';
import { jobLabels } from '../../../src/app/shared/job-text.ts';
import { staffWords } from '../../../src/cli/words.ts';
import { newestGuide, readLine, sampleLines, writeLine } from '../../../src/cli/note-commands.ts';
import { readingSchema } from '../../../src/cli/note-json.ts';
import { schemaFiles } from '../../../src/cli/schema.ts';
import { readFileSync, readdirSync } from 'node:fs';
import { here } from '../cli/here.ts';
import { working } from './codebooks.ts';

const current: CurrentCodebooks = { codebooks: working, newest: 1, draft: true };
const labels = jobLabels(staffWords());
const today = new Date('2026-11-25T10:00:00Z');
const guide = newestGuide('door-locked', current) ?? expect.unreachable();

const write = (json: unknown, line = 1, using = current): string =>
  writeLine(typeof json === 'string' ? json : JSON.stringify(json), line, using, today).text;
const read = (code: string): unknown => JSON.parse(readLine(code, current, today, labels).text);

const journey = {
  guide: 'door-locked',
  answers: [
    ['danger', 'none'],
    ['since', 'over-4'],
  ],
  error: 'F9 E1',
  details: { fuel: 'gas' },
  made: '2026-11-20',
};

describe('write and read', () => {
  test('a journey comes back as it was', () => {
    const code = write(journey);
    expect(read(code)).toEqual({ kind: 'exact', code, note: { ...journey, release: 1 } });
  });

  test('what read prints, write takes', () => {
    const code = write(journey);
    const { note } = read(code) as { note: unknown };
    expect(write(note)).toBe(code);
  });

  test('the day is today where none is given', () => {
    const code = write({ guide: 'door-locked', answers: [] });
    expect(read(code)).toMatchObject({ note: { made: '2026-11-25', error: '', details: {} } });
  });

  test.each([
    ['{', { code: 'bad-json' }],
    ['', { code: 'bad-json' }],
    ['[]', { code: 'bad-shape', issues: [{ path: '', code: 'invalid_type' }] }],
    [
      { guide: 'door-locked', answers: [['danger']] },
      { code: 'bad-shape', issues: [{ path: 'answers.0', code: 'too_small' }] },
    ],
    [
      { guide: 'door-locked', answers: [], shoes: 1 },
      { code: 'bad-shape', issues: [{ path: '', code: 'unrecognized_keys' }] },
    ],
    [
      { guide: 'x', answers: [] },
      { code: 'unknown-guide', guide: 'x', release: 1 },
    ],
    [
      { guide: 'door-locked', answers: [['danger', 'x']] },
      { code: 'not-a-journey', step: 0, at: 'danger', answer: 'x' },
    ],
    [
      { guide: 'door-locked', answers: [], release: 9 },
      { code: 'unknown-release', release: 9, known: [1] },
    ],
    [
      { guide: 'door-locked', answers: [], error: '\u202eF9' },
      { code: 'error-characters', characters: ['\u202e'] },
    ],
  ])('a broken line %j is told with its number', (input, problem) => {
    expect(JSON.parse(write(input, 7))).toEqual({ line: 7, problem });
  });

  test.each(['9999-12-31', '2026-11-27', '2026-10-25', '1970-01-01'])(
    'a day that a code cannot tell is refused: %s',
    (made) => {
      expect(JSON.parse(write({ guide: 'door-locked', answers: [], made }))).toMatchObject({
        problem: { code: 'bad-day', made },
      });
    },
  );

  test('no key is passed over without a word', () => {
    const line = '{"guide":"door-locked","answers":[],"details":{"__proto__":"gas"}}';
    expect(JSON.parse(write(line))).toMatchObject({ problem: { code: 'bad-shape' } });
  });

  test('a repaired code is a proposal, not a good line', () => {
    const code = write({ guide: 'door-locked', answers: [] });
    expect(readLine(code, current, today, labels).good).toBe(true);
    expect(readLine(code.slice(1), current, today, labels).good).toBe(false);
  });

  test('every kind of reading is as the published schema says', () => {
    const code = write(journey);
    const inputs = [
      code,
      code.slice(1),
      '',
      'A',
      'A'.repeat(70),
      'A'.repeat(18),
      'U',
      'alfa bravoo charlie',
      '?'.repeat(16),
      'A'.repeat(16),
    ];
    const kinds = inputs.map((input) => {
      const json = readingSchema.parse(read(input));
      return json.kind === 'refused' ? json.problem.code : json.kind;
    });
    expect(kinds).toEqual([
      'exact',
      'repaired',
      'empty',
      'too-short',
      'too-long',
      'wrong-length',
      'bad-symbol',
      'bad-word',
      'too-many-unreadable',
      'too-damaged',
    ]);
  });
});

describe('journeys', () => {
  test('a sample is the same for the same seed, and can be written', () => {
    const lines = [...sampleLines(guide, 50, 7)];
    expect(lines).toHaveLength(50);
    expect([...sampleLines(guide, 50, 7)]).toEqual(lines);
    expect([...sampleLines(guide, 50, 8)]).not.toEqual(lines);
    for (const line of lines) expect(write(line)).toMatch(/^[0-9A-Z]{4}(-[0-9A-Z]{4}){3}$/);
  });
});

describe('at a terminal', () => {
  // The frozen books; those above are of the guides as they are now.
  const loaded = currentCodebooks(content(), today);
  const frozen = loaded.ok ? loaded.value : expect.unreachable();
  const code = write(journey, 1, frozen);
  const run = (args: readonly string[], input = '') =>
    spawnSync(process.execPath, [inRoot('src/cli/note.ts'), ...args], { input, encoding: 'utf8' });
  const note = (...words: readonly string[]) => here('src/cli/note.ts', ...words);

  test('one line out for each line in, status 2 when one is bad', () => {
    const input = `${JSON.stringify(journey)}\n{\n${JSON.stringify(journey)}`;
    const { stdout, status } = run(['write'], input);
    const lines = stdout.trimEnd().split('\n');
    expect(lines).toHaveLength(3);
    expect(lines[0]).toBe(code);
    expect(lines[2]).toBe(lines[0]);
    expect(JSON.parse(lines[1] ?? '')).toEqual({ line: 2, problem: { code: 'bad-json' } });
    expect(status).toBe(2);
  });

  test('status 0 when all are readable, from arguments or standard input', async () => {
    const given = await note('read', code, code.toLowerCase());
    const piped = run(['read'], `${code}\n${code.toLowerCase()}\n`);
    expect(given.status).toBe(0);
    expect(given.out.trimEnd().split('\n')).toHaveLength(2);
    expect(piped).toMatchObject({ status: 0, stdout: given.out });
  });

  test('stops where nobody reads on, and takes no more than it can print', async () => {
    const command = `"${process.execPath}" src/cli/note.ts journeys door-locked --sample 1000000 | head -2`;
    const { stdout, status } = spawnSync('sh', ['-c', command], {
      ...{ encoding: 'utf8', cwd: inRoot(''), timeout: 20_000 },
    });
    expect([stdout.trimEnd().split('\n').length, status]).toEqual([2, 0]);
    const { status: refused, err } = await note('journeys', 'door-locked', '--sample', '999999999');
    expect([refused, err]).toEqual([2, expect.stringContaining('1000000')]);
  });

  test('counts journeys', async () => {
    const { out, status } = await note('journeys', 'door-locked', '--count');
    const count = newestGuide('door-locked', frozen)?.first.journeys;
    expect([out.trim(), status]).toEqual([String(count), 0]);
  });

  test.each([
    [['write', 'x']],
    [['journeys', 'none', '--count']],
    [['journeys', 'door-locked', '--sample', 'x']],
    [['read', '--loud']],
  ])('%j is answered with how to use it', async (args) => {
    const { out, err, status } = await note(...args);
    expect([out, status]).toEqual(['', 2]);
    expect(err).not.toBe('');
    expect(err).not.toContain('    at ');
  });
});

test('the published JSON Schemas are those of the code: node src/cli/schema.ts', async () => {
  const files = await schemaFiles();
  const published = readdirSync(inRoot('public/schema')).map((name) => `public/schema/${name}`);
  expect([...files.keys()].toSorted()).toEqual(published.toSorted());
  for (const [file, text] of files) expect(readFileSync(inRoot(file), 'utf8'), file).toBe(text);
});
