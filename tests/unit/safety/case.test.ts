// The safety case is made of the log and of what runs found, and leaves nothing of them out.
import { existsSync } from 'node:fs';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import { linksOf } from '../../../src/content/hazards.ts';
import { guides, hazards, study, wcag } from '../../../src/content/load.ts';
import { trace } from '../../../src/journey/trace.ts';
import { argument } from '../../../src/site/safety/claims.ts';
import type { Claim } from '../../../src/site/safety/claims.ts';
import { upperBound } from '../../../src/site/safety/bounds.ts';
import { MOST, parts } from '../../../src/site/safety/drawing.ts';
import { backward, covered, files } from '../../../src/site/safety/trace.ts';
import { SHEET } from '../../../src/site/map-layout.ts';
import { rehearse } from '../../safety/rehearsal.ts';
import { journeyOf } from '../situations/walked.ts';

const below = (claim: Claim): readonly Claim[] => [claim, ...(claim.by ?? []).flatMap(below)];
const log = Object.entries(hazards());

describe('the argument', () => {
  const top = argument();
  const all = below(top);
  const goals = all.filter(({ kind }) => kind === 'goal');

  it('has a goal for each hazard, shown or marked as not shown', () => {
    const named = goals.flatMap(({ href }) =>
      href?.startsWith('#hazard-') ? [href.slice(8)] : [],
    );
    expect(named.toSorted()).toEqual(log.map(([id]) => id).toSorted());
    const open = goals.filter(
      ({ by = [], undeveloped = false }) => by.length === 0 && !undeveloped,
    );
    expect(open).toEqual([]);
    for (const [id, { controls }] of log)
      if (controls['outside-our-reach'])
        expect(goals.find(({ href }) => href === `#hazard-${id}`)?.undeveloped, id).toBe(true);
  });

  it('calls two things by one name nowhere, and one thing by two', () => {
    const says = new Map(all.map(({ id, says: text }) => [id, text]));
    for (const { id, says: text } of all) expect(says.get(id)).toBe(text);
    const solutions = [...new Map(all.map((one) => [one.id, one])).values()]
      .filter(({ kind }) => kind === 'solution')
      .map(({ says: text }) => text);
    expect(solutions.length).toBeGreaterThan(20);
    expect(new Set(solutions).size).toBe(solutions.length);
  });

  it('is drawn whole, each drawing on one sheet, no box on another', () => {
    const drawn = parts(top);
    const ids = new Set(drawn.flatMap(({ part }) => part.elements.map(({ claim }) => claim.id)));
    expect(ids).toEqual(new Set([...all, ...(top.given ?? [])].map(({ id }) => id)));
    for (const { of, part } of drawn) {
      expect(part.width, of.says).toBeLessThanOrEqual(SHEET.width);
      expect(part.height, of.says).toBeLessThanOrEqual(MOST);
      for (const [index, one] of part.elements.entries())
        for (const other of part.elements.slice(index + 1)) {
          const apart =
            Math.abs(one.x + one.width / 2 - other.x - other.width / 2) >=
              (one.width + other.width) / 2 ||
            Math.abs(one.y + one.height / 2 - other.y - other.height / 2) >=
              (one.height + other.height) / 2 - 0.2;
          expect(apart, `${one.claim.id} and ${other.claim.id}`).toBe(true);
        }
    }
  });
});

describe('the trace', () => {
  const links = log.flatMap(([id, hazard]) => linksOf(hazard).map((link) => ({ id, ...link })));

  it('is the same both ways', () => {
    const back = [...backward()].flatMap(([kind, names]) =>
      [...names].flatMap(([name, ids]) => ids.map((id) => `${id} ${kind} ${name}`)),
    );
    const forth = new Set(links.map(({ id, kind, name }) => `${id} ${kind} ${name}`));
    expect(forth.size).toBeGreaterThan(500);
    expect(new Set(back)).toEqual(forth);
    const all = covered();
    expect(all.map(({ of }) => of > 10)).toEqual([true, true, true]);
    for (const { what, without } of all) expect(without, what).toEqual([]);
  });

  it('is a file that a table program reads back (RFC 4180)', () => {
    for (const [file, rows] of [
      ['hazards.csv', log.length],
      ['trace.csv', links.length],
    ] as const) {
      const text = files[file]?.() ?? '';
      expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
      expect(text.endsWith('\r\n')).toBe(true);
      const { data, errors } = Papa.parse(text.trimEnd(), { header: true });
      expect(errors).toEqual([]);
      expect(data).toHaveLength(rows);
    }
  });
});

it('WCAG 2.2 has 31, 24 and 31 criteria of levels A, AA and AAA (W3C); each test named is there', () => {
  const all = Object.values(wcag());
  const of = (wanted: string) => all.filter(({ level }) => level === wanted).length;
  expect([of('A'), of('AA'), of('AAA')]).toEqual([31, 24, 31]);
  const named = all.flatMap(({ by }) => by.match(/\w+\/[\w./-]+\.ts/g) ?? []);
  expect(named.length).toBeGreaterThan(20);
  expect(named.filter((file) => !existsSync(`tests/${file}`))).toEqual([]);
});

describe('the study', () => {
  it('has tasks that lead where they say, six of them grave', () => {
    const ends = study().map(({ guide: name, way, end }) => {
      const guide = guides().find(({ id }) => String(id) === name);
      if (!guide) throw new Error(`no guide ${name}`);
      const reached = trace(guide, journeyOf(guide, way));
      expect(reached.rest).toEqual([]);
      expect(String(reached.end.sentences)).toBe(end);
      return reached.end.urgency;
    });
    const grave = ends.map((urgency) => urgency === 'emergency' || urgency === 'today');
    expect(grave).toEqual([true, true, true, true, true, true, false, false]);
  });

  // 1 − 0.05^(1/n); the trial of 2,543 told 0.1184 % for 97.5 %, one-sided at 95 % it is less.
  it.each([
    [0, 300, 0.009936],
    [0, 60, 0.0487],
    [1, 473, 0.00999],
    [2, 628, 0.00999],
  ])('%i unsafe in %i sessions bounds the share', (events, trials, bound) => {
    expect(upperBound(events, trials)).toBeCloseTo(bound, 4);
  });

  it('leads a made-up reader who never slips to every right end', () => {
    const [sure, , hasty] = rehearse(guides(), study(), 50);
    expect(sure).toMatchObject({ sessions: 400, reached: 400, unsafe: 0 });
    expect(hasty?.reached).toBeLessThan(400);
  });
});
