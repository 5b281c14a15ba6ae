import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { guideFiles, inRoot } from '../../../src/cli/books.ts';
import { here } from './here.ts';

const folder = mkdtempSync(join(tmpdir(), 'prove-'));
afterAll(() => rmSync(folder, { recursive: true }));

const real = readFileSync(inRoot('content/guides/door-locked/graph.yaml'), 'utf8');

const prove = (...words: string[]) => here('src/cli/prove.ts', ...words);

/** The published guide with one text replaced, in a file of its own. */
function spoiled(from: string, to: string): string {
  if (real.split(from).length !== 2) throw new Error(`Not there once: ${from}`);
  const file = join(folder, 'graph.yaml');
  writeFileSync(file, real.replace(from, to));
  return file;
}

interface Json {
  readonly guides: readonly {
    readonly guide: string;
    readonly holds: boolean;
    readonly journeys: { readonly all: string };
    readonly properties: readonly {
      readonly id: string;
      readonly holds: boolean;
      readonly journeysCovered: string;
      readonly counterExample?: {
        readonly fault: { readonly code: string };
        readonly journey: readonly { readonly at: string; readonly answer: string }[];
      };
    }[];
    readonly grades: readonly { readonly page: string; readonly grade: number }[];
    readonly hardest: readonly { readonly sentence: string; readonly grade: number }[];
  }[];
  readonly problems: readonly { readonly code: string }[];
}

describe('npm run prove', () => {
  // Files named, so that no language is judged: `npm run prove`, a check of its own, does all.
  it('proves every published guide, as JSON for machines', () => {
    const command = [inRoot('src/cli/prove.ts'), '--json', ...guideFiles().map(inRoot)];
    const { status, stdout, stderr } = spawnSync(process.execPath, command, { encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const { guides, problems } = JSON.parse(stdout) as Json;
    expect(problems).toEqual([]);
    expect(guides.map(({ guide }) => guide)).toContain('door-locked');
    expect(guides).toHaveLength(guideFiles().length);
    for (const { holds, properties, journeys, grades, hardest } of guides) {
      expect(holds).toBe(true);
      expect(properties).toHaveLength(10);
      expect(properties.every(({ journeysCovered }) => journeysCovered === journeys.all)).toBe(
        true,
      );
      expect(grades.length).toBeGreaterThan(10);
      for (const { grade } of grades) expect(grade).toBeLessThanOrEqual(6);
      expect(hardest).toHaveLength(10);
    }
  });

  it('tells people each property, the counts, the grades and the hardest sentences', async () => {
    const { status, out } = await prove('content/guides/door-locked/graph.yaml');
    expect(status).toBe(0);
    expect(out.match(/^ {2}holds /gm)).toHaveLength(10);
    expect(out).toMatch(/\d{1,3}(,\d{3})+ journeys/);
    expect(out).toContain('Reading grade of each page');
    expect(out).toContain('The hardest sentences');
    expect(out).not.toContain('FAILS');
  });

  it('tells a counter-example in the words of the guide, and what to do', async () => {
    const file = spoiled('warm: { to: wait }', 'warm: { to: inside }');
    const { status, out } = await prove(file);
    expect(status).toBe(1);
    expect(out).toContain('FAILS  door-only-when-cool');
    expect(out).toMatch(/\d+\. Hold your hand near the door\. Is there heat\? → /);
    expect(out).toContain('What to do: ');
    const { guides } = JSON.parse((await prove('--json', file)).out) as Json;
    const door = guides[0]?.properties.find(({ id }) => id === 'door-only-when-cool');
    expect(door?.counterExample?.fault.code).toBe('door-while-hot');
    expect(door?.counterExample?.journey).toContainEqual({ at: 'near-plain', answer: 'warm' });
  });

  it('tells where a file is broken: file, line, column, what to do', async () => {
    const file = spoiled('warm: { to: wait }', 'warm: { to: wiat }');
    const line = real.split('\n').findIndex((text) => text.includes('warm: { to: wait }')) + 1;
    const { status, err } = await prove(file);
    expect(status).toBe(2);
    const column = '      warm: { to: '.length + 1;
    expect(err).toContain(`graph.yaml:${line}:${column}: near, answer warm, leads to "wiat"`);
    expect(err).toContain('Correct the name after "to"');
  });

  it.each([
    ['no such file', 'no-such-file.yaml', 'no such file'],
    ['no such option', '--jsn', 'npm run prove'],
  ])('has words for %s', async (_, word, told) => {
    const { status, err } = await prove(word);
    expect(status).toBe(2);
    expect(err).toContain(told);
  });
});
