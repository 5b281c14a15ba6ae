import { readFileSync } from 'node:fs';
import papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { loadGuide } from '../../../src/guide/load.ts';
import type { BlockTrouble, GuideTrouble, JoinTrouble } from '../../../src/guide/problem.ts';
import { edited, smallSource } from './support/small.ts';

/**
 * Slips in the small guide, one a line: what is replaced by what (`\\n` a new line), its place as an
 * editor counts it, and the trouble it makes with the facts told of it.
 */
type Slip = Readonly<Record<'slip' | 'from' | 'to' | 'place' | 'code' | 'facts', string>>;

const table = readFileSync(new URL('support/slips.tsv', import.meta.url), 'utf8');
const slips = papa.parse<Slip>(table.trimEnd(), { header: true, delimiter: '\t' }).data;

function troublesOf(source: string) {
  const loaded = loadGuide(source, 'small.yaml');
  return loaded.ok ? [] : loaded.error;
}

describe('loadGuide on a broken file', () => {
  it('has nothing to say about the file the slips are made in', () => {
    expect(troublesOf(smallSource)).toEqual([]);
  });

  it.each(slips)('tells $slip with its place', ({ from, to, place, code, facts }) => {
    const [line, column] = place.split(':').map(Number);
    const [before = '', after = ''] = [from, to].map((text) => text.replaceAll('\\n', '\n'));
    expect(troublesOf(edited(before, after))).toContainEqual(
      expect.objectContaining({
        ...(JSON.parse(facts) as object),
        code,
        file: 'small.yaml',
        place: { line, column },
      }),
    );
  });

  it('was shown every kind of trouble', () => {
    const codes = new Set(slips.map(({ code }) => code));
    // One entry for each code; the type keeps the list complete.
    // Those of guides that hand over are in join.test.ts, of flags in flags.test.ts, of blocks in blocks.test.ts.
    type Elsewhere = JoinTrouble['code'] | BlockTrouble['code'] | 'flag-unknown' | 'flag-repeated';
    const all: Record<Exclude<GuideTrouble['code'], Elsewhere>, true> = {
      ...{ 'yaml-syntax': true, 'key-missing': true, 'key-unknown': true, 'value-wrong': true },
      ...{ 'value-unknown': true, 'name-malformed': true, 'stop-without-call': true },
      ...{ 'step-without-action': true, 'unsure-missing': true, 'end-with-answers': true },
      ...{ 'start-unknown': true, 'start-not-question': true, 'track-repeated': true },
      ...{ 'track-unknown': true, 'target-unknown': true, 'target-missing': true },
      ...{ 'wrong-track': true, 'text-unknown': true, 'fact-set-and-cleared': true },
      ...{ 'danger-hidden': true, 'name-taken': true, 'node-unreachable': true, loop: true },
      ...{ 'entry-missing': true, 'rule-unknown': true, 'optional-unknown': true },
    };
    expect([...codes].toSorted()).toEqual(Object.keys(all).toSorted());
  });

  it('tells all problems of a file in its order, not just the first', () => {
    const source = edited('id: small', 'id: Small')
      .replace("'yes': { to: done }", "'yes': { to: dnoe }")
      .replace('    action: look\n', '')
      .replace(', call: [emergency]', '');
    expect(troublesOf(source).map(({ code, place }) => [code, place.line])).toEqual([
      ['name-malformed', 1],
      ['step-without-action', 11],
      ['target-unknown', 21],
      ['stop-without-call', 23],
    ]);
  });

  it.each(['', 'a line', '- a list', 'nodes: 3', '&a [*a]', '\0', 'nodes: {danger: null}'])(
    'says something and does not throw on %j',
    (source) => {
      expect(troublesOf(source).length).toBeGreaterThan(0);
    },
  );
});
