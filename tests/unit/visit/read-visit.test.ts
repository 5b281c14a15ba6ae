/** What staff are shown of a note: read off codes and journeys whose meaning is written down here. */
import { describe, expect, it } from 'vitest';
import { parseJourney } from '../../../src/address/journey-text.ts';
import { currentCodebooks } from '../../../src/content/codebooks.ts';
import { content } from '../../../src/content/load.ts';
import { loadFigures } from '../../../src/cli/route.ts';
import type { GuideId } from '../../../src/guide/types.ts';
import { readCode } from '../../../src/note/read.ts';
import { sampleJourneys } from '../../../src/note/sample.ts';
import type { Note } from '../../../src/note/types.ts';
import { readVisit } from '../../../src/visit/read-visit.ts';

const current = currentCodebooks(content(), new Date('2026-11-25T10:00:00Z'));
if (!current.ok) throw new Error(JSON.stringify(current.error));
const { codebooks, newest } = current.value;
const figures = loadFigures();
const SEED = 5;

function noteOf(guide: string, way: string): Note {
  const journey = parseJourney(way);
  return {
    ...{ release: newest, guide: guide as GuideId, journey, day: 1, details: {}, error: '' },
  };
}

describe('a visit', () => {
  it('tells of a burner that lit late once, and not as of an oven (defect 3)', () => {
    const reading = readCode('4GZP-MMTW-CF41-FBPV', codebooks);
    if (reading.kind !== 'exact') throw new Error(reading.kind);
    const { guide, because, flags, urgency, state } = readVisit(reading.note, codebooks, figures);
    expect([guide.id, because?.node.id, because?.edge.id]).toEqual(['burner', 'click', 'late']);
    expect(flags).toEqual(['burner-late-light']);
    expect([urgency, state]).toEqual(['today', 'stop']);
  });

  it(`has each flag once, in one order for all, in every guide of every codebook (seed ${SEED})`, () => {
    let flagged = 0;
    for (const { release, guides } of codebooks.values())
      for (const guide of guides)
        for (const journey of sampleJourneys(guide, 60, SEED)) {
          const note = { ...noteOf(guide.id, ''), release, journey };
          const { flags } = readVisit(note, codebooks, figures);
          expect(guide.flags.filter((flag) => flags.includes(flag))).toEqual(flags);
          flagged += flags.length;
        }
    expect(flagged).toBeGreaterThan(500);
  });

  it('puts an answer of danger first, and leaves it out of no list', () => {
    const note = noteOf('door-locked', 'danger.none~since.over-4~near.quiet~display.gas');
    const { danger, because, urgency, legs, tried } = readVisit(note, codebooks, figures);
    expect([danger?.edge.id, because, urgency]).toEqual(['gas', danger, 'emergency']);
    const listed = legs.flatMap((leg) => leg.groups.flatMap(([, steps]) => steps));
    expect(listed.map(({ node }) => String(node.id)).toSorted()).toEqual([
      ...['danger', 'display', 'near', 'since'],
    ]);
    expect(tried).toEqual([]);
  });

  it('is open where the guide was left, and knows what was not asked', () => {
    const note = noteOf('door-locked', 'danger.none~since.over-4~near.quiet');
    const { state, urgency, end, notAsked, danger } = readVisit(note, codebooks, figures);
    expect([state, urgency, end.page, danger]).toEqual(['open', 'open', 'display', undefined]);
    const pages = notAsked.map(({ page }) => page);
    expect(pages).toContain('display');
    expect(pages).not.toContain('near');
  });

  it('keeps the groups of each guide a journey came through, and calls the last one the complaint', () => {
    const way = 'danger.none~what.error~error-shows/error-write.written';
    const { legs, last, model, evidence, flags } = readVisit(
      noteOf('burner', way),
      codebooks,
      figures,
    );
    expect(legs.map(({ guide }) => String(guide))).toEqual(['burner', 'error-shows']);
    expect([last, model, flags]).toEqual(['error-shows', figures.models['burner'], ['error-seen']]);
    expect(evidence[0]).toEqual({ key: 'complaint', answer: 'error-shows' });
  });

  it('ranks a danger told after a hand-over by the guide it was told in, and by every answer', () => {
    let handed = 0;
    for (const guide of codebooks.get(newest)?.guides ?? [])
      for (const journey of sampleJourneys(guide, 100, SEED)) {
        const note = { ...noteOf(guide.id, ''), journey };
        const { urgency, last, legs, steps, evidence, model } = readVisit(note, codebooks, figures);
        if (urgency !== 'emergency' || legs.length < 2 || !model) continue;
        handed++;
        expect(last).toBe(steps.at(-1)?.node.guide);
        const open = readVisit({ ...note, journey: journey.slice(0, -1) }, codebooks, figures);
        expect(evidence.slice(0, open.evidence.length)).toEqual(open.evidence);
      }
    expect(handed).toBeGreaterThan(100);
  });

  it('raises the breaker’s flag at a stop that leaves it off', () => {
    const way =
      'danger.none~what.element~el-kind.coil~el-how.weak~el-which.all~power-el.yes~panel.tripped';
    const note = noteOf('burner', way);
    expect(readVisit(note, codebooks, figures).flags).toEqual(['tripped', 'breaker-off']);
  });

  it('knows neither groups nor a model without figures', () => {
    const { model, legs } = readVisit(noteOf('burner', 'danger.none~what.foil'), codebooks);
    expect(model).toBeUndefined();
    expect(legs[0]?.groups.map(([group]) => group)).toEqual(['happened']);
  });
});
