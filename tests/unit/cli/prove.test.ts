import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { copyOfContent, spoil } from '../content/copy.ts';
import { here } from './here.ts';
import { guides as published } from '../../../src/content/load.ts';

const names = published().map(({ id }) => id);

const prove = (...words: string[]) => here('src/cli/prove.ts', ...words);

/** The published content with one text of a guide replaced, proved. */
async function proveSpoiled(from: string, to: string, ...words: string[]) {
  const { folder, done } = copyOfContent();
  try {
    const line = spoil(folder, 'guides/door-locked/graph.yaml', from, to);
    return { line, ...(await prove('--content', folder, ...words)) };
  } finally {
    done();
  }
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
  readonly problems: readonly { readonly about: string; readonly hint: string }[];
}

describe('npm run prove', () => {
  // Guides named, so that no language is judged: `npm run prove`, a check of its own, does all.
  it('proves every published guide, as JSON for machines', () => {
    const command = ['src/cli/prove.ts', '--json', ...names];
    const { status, stdout, stderr } = spawnSync(process.execPath, command, { encoding: 'utf8' });
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    const { guides, problems } = JSON.parse(stdout) as Json;
    expect(problems).toEqual([]);
    expect(guides.map(({ guide }) => guide)).toContain('door-locked');
    expect(guides).toHaveLength(names.length);
    for (const { holds, properties, journeys, grades, hardest } of guides) {
      expect(holds).toBe(true);
      expect(properties).toHaveLength(12);
      expect(properties.every(({ journeysCovered }) => journeysCovered === journeys.all)).toBe(
        true,
      );
      expect(grades.length).toBeGreaterThan(10);
      for (const { grade } of grades) expect(grade).toBeLessThanOrEqual(6);
      expect(hardest).toHaveLength(10);
    }
  });

  it('tells people each property, the counts, the grades and the hardest sentences', async () => {
    const { status, out } = await prove('door-locked');
    expect(status).toBe(0);
    expect(out.match(/^ {2}holds /gm)).toHaveLength(12);
    expect(out).toMatch(/\d{1,3}(,\d{3})+ journeys/);
    expect(out).toContain('Reading grade of each page');
    expect(out).toContain('The hardest sentences');
    expect(out).not.toContain('FAILS');
  });

  it('tells a counter-example in the words of the guide, and what to do', async () => {
    const slip = ['heat: { to: wait }', 'heat: { to: try-door }'] as const;
    const { status, out } = await proveSpoiled(...slip, 'door-locked');
    expect(status).toBe(1);
    expect(out).toContain('FAILS  door-only-when-cool');
    expect(out).toMatch(/\d+\. Do you feel heat, or hear a fan\? → /);
    expect(out).toContain('What to do: ');
    const { guides, problems } = JSON.parse(
      (await proveSpoiled(...slip, '--json', 'door-locked')).out,
    ) as Json;
    expect(problems).toContainEqual(
      expect.objectContaining({ about: 'proof', hint: expect.stringContaining('Lead') as string }),
    );
    const door = guides[0]?.properties.find(({ id }) => id === 'door-only-when-cool');
    expect(door?.counterExample?.fault.code).toBe('door-while-hot');
    expect(door?.counterExample?.journey).toContainEqual({ at: 'near-calm', answer: 'heat' });
  });

  it('tells where a file is broken: file, line, column, what to do', async () => {
    const { line, status, err } = await proveSpoiled('heat: { to: wait }', 'heat: { to: wiat }');
    expect(status).toBe(2);
    const column = '      heat: { to: '.length + 1;
    expect(err).toContain(`graph.yaml:${line}:${column}: near, answer heat, leads to "wiat"`);
    expect(err).toContain('Correct the name after "to"');
  });

  it.each([
    ['no such guide', 'no-such-guide', 'There is no guide'],
    ['no such option', '--jsn', 'npm run prove'],
  ])('has words for %s', async (_, word, told) => {
    const { status, err } = await prove(word);
    expect(status).toBe(2);
    expect(err).toContain(told);
  });
});
