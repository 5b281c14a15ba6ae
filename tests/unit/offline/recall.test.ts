import { describe, expect, it } from 'vitest';
import { daysOld, parseRecall, recalls } from '../../../src/offline/recall.ts';

const copy = { release: 5, pages: ['/door-locked/near/'] } as const;
const near = 'door-locked/near/';

describe('a recall', () => {
  it.each<[string, number, string[], string, boolean]>([
    ['names nothing', 1, [], near, false],
    ['asks for no more than the copy is', 5, [], near, false],
    ['asks for a later release', 6, [], near, true],
    ['asks for a later release, whatever the page of a guide', 6, [], 'no-heat/danger/', true],
    ['asks for a later release, not of pages that guide nobody', 6, [], 'about/', false],
    ['names a page that was corrected before the copy was made', 5, [`/${near}`], near, false],
    ['names that page once more', 5, [`/${near}`, `/${near}`], near, true],
    ['names another page', 5, [`/${near}`, '/door-locked/wait/'], near, false],
    ['names a page anew', 5, [`/${near}`, '/door-locked/wait/'], 'door-locked/wait/', true],
    ['names a guide', 5, [`/${near}`, '/door-locked/'], 'door-locked/wait/', true],
    ['names a guide whose name begins another’s', 5, ['/door/'], 'door-locked/wait/', false],
    ['names all pages', 5, [`/${near}`, '/'], 'no-heat/danger/', true],
    ['lost what the copy knew', 5, [], near, false],
  ])('%s', (_, least, pages, page, expected) => {
    expect(recalls({ least, pages }, copy, page)).toBe(expected);
  });

  it.each<[string, unknown]>([
    ['nothing', undefined],
    ['a list', []],
    ['no number', { least: '6', pages: [] }],
    ['half a number', { least: 1.5, pages: [] }],
    ['no pages', { least: 6 }],
    ['pages that are no text', { least: 6, pages: [1] }],
  ])('of another form is none: %s', (_, value) => {
    expect(parseRecall(value)).toBeUndefined();
  });

  it('is read whatever else a later form may say', () => {
    expect(parseRecall({ least: 6, pages: ['/'], more: 1 })).toEqual({ least: 6, pages: ['/'] });
  });
});

describe('the age of a copy', () => {
  const noon = Date.parse('2026-11-28T12:00:00Z');
  it.each([
    ['2026-11-28', 0],
    ['2026-11-27', 1],
    ['2026-08-30', 90],
    // A clock set back says nothing of the age.
    ['2026-12-24', 0],
  ])('%s', (from, days) => {
    expect(daysOld(Date.parse(from), noon)).toBe(days);
  });
});
