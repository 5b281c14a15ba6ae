/** The whole way, note to code and back, with the real guides. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alphabets, longestError } from '../../../src/note/error-text.ts';
import { makeCodebooks } from '../../../src/note/codebook.ts';
import { readCode } from '../../../src/note/read.ts';
import { sampleJourneys } from '../../../src/note/sample.ts';
import { spell } from '../../../src/note/spelling.ts';
import type { Note, NoteCode } from '../../../src/note/types.ts';
import { writeCode } from '../../../src/note/write.ts';
import { rankOf, unrank } from '../../../src/note/edges.ts';
import { cases } from '../../support/sample.ts';
import { allDetails, codebookOf, guideOf, plainNote, smallRelease, working } from './codebooks.ts';

const codebook = codebookOf(working);

function codeOf(note: Note, codebooks = working): NoteCode {
  const code = writeCode(note, codebooks);
  if (!code.ok) return expect.unreachable(JSON.stringify(code.error));
  return code.value;
}

const symbolsIn = (code: NoteCode): number => code.replaceAll('-', '').length;

/** The first and last rank at every node along the way of each of these. */
function boundaries(index: number): bigint[] {
  const guide = guideOf(working, 1, index);
  const ranks = new Set([0n, guide.first.journeys - 1n]);
  const seen = new Set<string>();
  const go = (node: typeof guide.first, rank: bigint): void => {
    if (seen.has(node.id)) return;
    seen.add(node.id);
    for (const { before, to } of node.edges) {
      ranks
        .add(rank + before - 1n)
        .add(rank + before)
        .add(rank + before + to.journeys - 1n);
      go(to, rank + before);
    }
  };
  go(guide.first, 0n);
  return [...ranks];
}

/**
 * Where the last journey with five of the largest letters takes one group more: 20 characters hold
 * 70 bits, 24 hold 90; melted-smoke's takes 71.02, with all details 90.26, no-heat's 70.27 and 89.51.
 */
const textLengths: Readonly<Record<string, readonly [withText: number, withBoth: number]>> = {
  'melted-smoke': [24, 28],
  'no-heat': [24, 24],
};

/**
 * Guides with at most this many journeys are tried one by one, larger ones by sample: of each guide
 * so many that a slip in 1 of 5,000 journeys comes up (with EVERY=1, 1 of 80,000), and beside them
 * both ends of every node's range of ranks, where a slip in the numbering shows.
 */
const exhaustive = BigInt(cases(15_000, 500_000));
const samples = cases(15_000, 250_000);

describe.each(codebook.guides.map((guide, index) => [guide.id, index] as const))(
  '%s',
  (_, index) => {
    const guide = guideOf(working, 1, index);

    function* ranks(): Generator<Note> {
      const make = (journey: Note['journey'], day: number): Note => ({
        release: 1,
        guide: guide.id,
        journey,
        day,
        details: {},
        error: '',
      });
      for (const rank of boundaries(index)) yield make(unrank(guide, rank) ?? [], 31);
      if (guide.first.journeys <= exhaustive) {
        for (let rank = 0n; rank < guide.first.journeys; rank += 1n) {
          yield make(unrank(guide, rank) ?? [], Number(rank % 32n));
        }
      } else {
        const seed = 2026 + index;
        let i = 0;
        for (const journey of sampleJourneys(guide, samples, seed))
          yield make(journey, (i += 1) % 32);
      }
    }

    test('each journey encodes in 16 characters and decodes to itself', () => {
      let tried = 0;
      for (const note of ranks()) {
        const code = codeOf(note);
        const reading = readCode(code, working);
        const same =
          code.length === 19 &&
          reading.kind === 'exact' &&
          reading.code === code &&
          reading.note.day === note.day &&
          reading.note.guide === note.guide &&
          reading.note.journey.length === note.journey.length &&
          reading.note.journey.every(
            ({ at, answer }, i) => note.journey[i]?.at === at && note.journey[i].answer === answer,
          );
        if (!same) expect.unreachable(`seed ${2026 + index}: ${code} ${JSON.stringify(note)}`);
        tried += 1;
      }
      expect(tried).toBeGreaterThan(
        Number(guide.first.journeys < exhaustive ? guide.first.journeys : samples),
      );
    });

    test('a journey ends at the node its rank says', () => {
      for (const rank of boundaries(index)) {
        const back = rankOf(guide, unrank(guide, rank) ?? []);
        expect(back.ok && back.value).toBe(rank);
      }
    });

    test('lengths: 16, all details 20, five plain characters of error text four more but for the longest', () => {
      const last = guide.first.journeys - 1n;
      const journey = unrank(guide, last) ?? [];
      const note: Note = { release: 1, guide: guide.id, journey, day: 31, details: {}, error: '' };
      const details = allDetails(codebook);
      // The last letter of the alphabet is the largest digit: no text of five takes more.
      const error = (alphabets[0].at(-1) ?? '').repeat(5);
      expect(symbolsIn(codeOf(note))).toBe(16);
      expect(symbolsIn(codeOf({ ...note, details }))).toBe(20);
      const [withText, withBoth] = textLengths[guide.id] ?? [20, 24];
      expect(symbolsIn(codeOf({ ...note, error }))).toBe(withText);
      expect(symbolsIn(codeOf({ ...note, details, error }))).toBe(withBoth);
      const longest = (alphabets[1].at(-1) ?? '').repeat(longestError);
      expect(symbolsIn(codeOf({ ...note, details, error: longest }))).toBeLessThanOrEqual(60);
    });
  },
);

const noteOfSmall: fc.Arbitrary<Note> = fc
  .record({
    rank: fc.bigInt({ min: 0n, max: guideOf(working).first.journeys - 1n }),
    day: fc.integer({ min: 0, max: 31 }),
    details: fc.subarray(Object.entries(allDetails(codebook))),
    error: fc.stringMatching(/^[!-~°]{0,24}$/),
  })
  .map(({ rank, day, details, error }) => ({
    ...plainNote(rank, day),
    details: Object.fromEntries(details),
    error,
  }));

test('any note with details and error text comes back, typed or spelled', () => {
  fc.assert(
    fc.property(noteOfSmall, (note) => {
      const code = codeOf(note);
      const exact = { kind: 'exact', code, note };
      expect(readCode(code, working)).toEqual(exact);
      expect(readCode(code.toLowerCase().replaceAll('-', ' '), working)).toEqual(exact);
      expect(readCode(spell(code).flat().join(' '), working)).toEqual(exact);
    }),
    { numRuns: cases(500, 2000) },
  );
});

test('different notes have different codes', () => {
  const codes = new Set<string>();
  const notes = cases(5000, 20_000);
  for (let rank = 0; rank < notes; rank += 1) codes.add(codeOf(plainNote(BigInt(rank), rank % 32)));
  expect(codes.size).toBe(notes);
});

test('a code of a release this library lacks is refused as that', () => {
  const later = makeCodebooks([1, 2, 20].map(smallRelease));
  const note = { ...plainNote(0n, 3, later), release: 20 };
  const code = codeOf(note, later);
  expect(readCode(code, later)).toEqual({ kind: 'exact', code, note });
  expect(readCode(code, makeCodebooks([smallRelease(1)]))).toEqual({
    kind: 'refused',
    problem: { code: 'unknown-release', release: 20, known: [1] },
  });
});
