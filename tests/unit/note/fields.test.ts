import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { alphabets, longestError, textToNumber } from '../../../src/note/error-text.ts';
import { noteToNumber, numberToNote } from '../../../src/note/fields.ts';
import { makeCodebooks } from '../../../src/note/codebook.ts';
import { pack } from '../../../src/note/number.ts';
import type { Digit } from '../../../src/note/number.ts';
import type { Note, WriteProblem } from '../../../src/note/types.ts';
import { unrank } from '../../../src/note/edges.ts';
import { asGuideId, codebookOf, guideOf, smallRelease } from './codebooks.ts';

const numbers = [1, 2, 14, 15, 16, 17, 30, 31, 45, 46, 1000];
const codebooks = makeCodebooks(numbers.map(smallRelease));

const anyText = fc
  .array(fc.constantFrom(...alphabets[1]), { maxLength: longestError })
  .map((characters) => characters.join('').replace(/ +/g, ' ').trim());

export const anyNote: fc.Arbitrary<Note> = fc
  .record({
    release: fc.constantFrom(...numbers),
    guide: fc.nat({ max: 1 }),
    rank: fc.bigInt({ min: 0n, max: 10n }),
    day: fc.integer({ min: 0, max: 31 }),
    fuel: fc.constantFrom(undefined, 'gas', 'electric'),
    age: fc.constantFrom(undefined, 'young', 'old', 'ancient'),
    error: fc.oneof(fc.constant(''), anyText),
  })
  .map(({ release, guide: index, rank, day, fuel, age, error }) => {
    const guide = guideOf(codebooks, release, index);
    const journey = unrank(guide, rank % guide.first.journeys) ?? [];
    const details = { ...(fuel ? { fuel } : {}), ...(age ? { age } : {}) };
    return { release, guide: guide.id, journey, day, details, error };
  });

test('a note and its number say the same', () => {
  fc.assert(
    fc.property(anyNote, (note) => {
      const number = noteToNumber(note, codebooks);
      if (!number.ok) return expect.unreachable(JSON.stringify(number.error));
      expect(numberToNote(number.value, codebooks)).toEqual({ ok: true, value: note });
    }),
    { numRuns: 3000 },
  );
});

test('every small number is no note or the number of its note', () => {
  const count = { notes: 0, refused: 0 };
  for (let number = 0n; number < 60_000n; number += 1n) {
    const note = numberToNote(number, codebooks);
    if (note.ok) {
      count.notes += 1;
      expect(noteToNumber(note.value, codebooks)).toEqual({ ok: true, value: number });
    } else count.refused += 1;
  }
  expect(count.notes).toBeGreaterThan(3000);
  expect(count.refused).toBeGreaterThan(10_000);
});

/** The number with these digits in release 1, guide 0, day 0. */
function craft(shape: bigint, rank: bigint, digits: readonly Digit[], rest: bigint): bigint {
  const journeys = guideOf(codebooks).first.journeys;
  const head: Digit[] = [
    { digit: 0n, radix: 16n },
    { digit: 0n, radix: 2n },
    { digit: 0n, radix: 32n },
    { digit: shape, radix: 6n },
    { digit: rank, radix: journeys },
  ];
  return pack([...head, ...digits], rest);
}

const noDetails: Digit[] = [
  { digit: 0n, radix: 3n },
  { digit: 0n, radix: 4n },
];

describe('numbers that would be second numbers of a note are refused', () => {
  const [narrow, wide] = alphabets;
  test.each([
    ['something left over', craft(0n, 3n, [], 1n), 'error'],
    ['details, but none answered', craft(1n, 3n, noDetails, 0n), 'details'],
    ['a text, but an empty one', craft(2n, 3n, [], 0n), 'error'],
    ['the wide alphabet for a narrow text', craft(4n, 3n, [], textToNumber('F9', wide)), 'error'],
    ['a space in front', craft(2n, 3n, [], textToNumber(' F9', narrow)), 'error'],
    ['two spaces', craft(2n, 3n, [], textToNumber('F  9', narrow)), 'error'],
    ['a text too long', craft(2n, 3n, [], 1n << 200n), 'error'],
  ])('%s', (_, number, field) => {
    const error = { code: 'impossible', field };
    expect(numberToNote(number, codebooks)).toEqual({ ok: false, error });
  });

  test('while their neighbours are notes', () => {
    const good = [
      craft(0n, 3n, [], 0n),
      craft(1n, 3n, [{ digit: 1n, radix: 3n }, ...noDetails.slice(1)], 0n),
      craft(2n, 3n, [], textToNumber('F 9', narrow)),
      craft(4n, 3n, [], textToNumber('f9', wide)),
    ];
    expect(good.map((number) => numberToNote(number, codebooks).ok)).toEqual([
      true,
      true,
      true,
      true,
    ]);
  });
});

test('releases take one digit up to 15, one more for each further 15', () => {
  const base: Note = { ...anyNoteOf(1), day: 0 };
  const numberOf = (release: number): bigint | undefined => {
    const number = noteToNumber({ ...base, release }, codebooks);
    return number.ok ? number.value : undefined;
  };
  // Guide 1, rank 0, day 0: the guide's digit is all there is above the release.
  expect(numberOf(1)).toBe(16n);
  expect(numberOf(15)).toBe(16n + 14n);
  expect(numberOf(16)).toBe(256n + 15n);
  expect(numberOf(31)).toBe(4096n + 255n);
  expect(numberOf(46)).toBe(65536n + 4095n);
});

function anyNoteOf(release: number): Note {
  const guide = guideOf(codebooks, release, 1);
  return { release, guide: guide.id, journey: [], day: 0, details: {}, error: '' };
}

test('an unknown release is named with the known ones', () => {
  const error = { code: 'unknown-release', release: 3, known: numbers };
  expect(numberToNote(2n, codebooks)).toEqual({ ok: false, error });
  expect(noteToNumber({ ...anyNoteOf(1), release: 3 }, codebooks)).toEqual({ ok: false, error });
});

test('a note that cannot be written says why', () => {
  const note = anyNoteOf(1);
  const cases: [Partial<Note>, WriteProblem][] = [
    [{ guide: asGuideId('none') }, { code: 'unknown-guide', guide: 'none', release: 1 }],
    [{ day: 32 }, { code: 'bad-day', day: 32 }],
    [{ day: 1.5 }, { code: 'bad-day', day: 1.5 }],
    [
      { journey: [{ at: 'only', answer: 'z' }] as unknown as Note['journey'] },
      { code: 'not-a-journey', step: 0, at: 'only', answer: 'z' },
    ],
    [{ details: { shade: 'red' } }, { code: 'unknown-detail', detail: 'shade' }],
    [{ details: { constructor: 'red' } }, { code: 'unknown-detail', detail: 'constructor' }],
    [
      { details: { fuel: 'coal' } },
      { code: 'unknown-detail-answer', detail: 'fuel', answer: 'coal' },
    ],
    [{ error: 'F9→é→' }, { code: 'error-characters', characters: ['→', 'é'] }],
    [{ error: 'F'.repeat(25) }, { code: 'error-too-long', length: 25, most: 24 }],
    [{ error: ' F9' }, { code: 'error-untidy', tidy: 'F9' }],
  ];
  for (const [change, error] of cases) {
    expect(noteToNumber({ ...note, ...change }, codebooks)).toEqual({ ok: false, error });
  }
  expect(codebookOf(codebooks).details.map(({ id }) => id)).toEqual(['fuel', 'age']);
});
