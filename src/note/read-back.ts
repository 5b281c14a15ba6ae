/** What a caller reads back, laid beside the code that was given out. */
import { digitsOf } from './spelling.ts';
import { characterOf, unreadable } from './symbols.ts';
import { plainSymbols, spelledSymbols } from './typed.ts';
import type { NoteCode, ReadProblem } from './types.ts';
import { longestInput } from './read.ts';

/** One character of the code, of what was read back, or of both. */
export interface Compared {
  /** Place in the code from 0, hyphens left out; of an extra character the place it stands before. */
  readonly at: number;
  /** The code's character; '' for an extra one. */
  readonly is: string;
  /** What was read back; '' for a missing one, '?' for an unreadable one. */
  readonly was: string;
  readonly how: 'same' | 'wrong' | 'missing' | 'extra' | 'unreadable';
}

export type ReadBack =
  /** All of the code, or so far without a difference: `given` of `of` characters. */
  | { readonly kind: 'same' | 'so-far'; readonly given: number; readonly of: number }
  | {
      readonly kind: 'different';
      readonly places: readonly Compared[];
      /** How many of them are not the same; 1 or more. */
      readonly count: number;
      /** It was read back as digits (`digits.ts`): the places count those. */
      readonly digits: boolean;
    }
  | { readonly kind: 'unclear'; readonly problem: ReadProblem };

/**
 * Lay what was read back beside the code. While it is being typed (`whole` false) the
 * code's tail is still to come and no difference. The alignment is one of the fewest edits
 * (Levenshtein's distance: wrong, missing, extra each count 1), so that a dropped
 * character does not make all that follow it wrong. Time: code length × input length.
 */
export function readBack(code: NoteCode, input: string, whole: boolean): ReadBack {
  if (input.length > longestInput)
    return unclear({ code: 'too-long', given: input.length, most: longestInput });
  const characters = [...code].filter((sign) => sign !== '-');
  const plain = plainSymbols(input);
  const spelled = spelledSymbols(input);
  const compared = [plain, spelled]
    .flatMap((read) => (read?.ok ? [[...read.value]] : []))
    .flatMap((given) =>
      given.some((value) => value > 9 && value !== unreadable)
        ? [{ given, expected: characters }]
        : [characters, [...digitsOf(code)]].map((expected) => ({ given, expected })),
    )
    .map((one) => ({ ...one, places: align(one.expected, one.given, whole) }))
    .map((one) => ({ ...one, count: one.places.filter(({ how }) => how !== 'same').length }))
    .toSorted((a, b) => a.count - b.count);
  const [best] = compared;
  // Words of which one is none: what was meant is not known, however the letters may look.
  const garbled = spelled && !spelled.ok && best?.count !== 0 ? spelled : undefined;
  if (!best || garbled) {
    const read = garbled ?? plain;
    return unclear(read.ok ? { code: 'empty' } : read.error);
  }
  const { expected, given, places, count } = best;
  if (given.length === 0) return unclear({ code: 'empty' });
  if (count > 0) return { kind: 'different', places, count, digits: expected !== characters };
  const kind = given.length === expected.length ? 'same' : 'so-far';
  return { kind, given: given.length, of: expected.length };
}

function unclear(problem: ReadProblem): ReadBack {
  return { kind: 'unclear', problem };
}

/** The places of an alignment with the fewest edits; the code's untyped tail is left out. */
function align(expected: readonly string[], given: readonly number[], whole: boolean): Compared[] {
  const was = given.map(characterOf);
  const [rows, columns] = [expected.length + 1, was.length + 1];
  const cost = new Uint16Array(rows * columns);
  const at = (i: number, j: number): number => cost[i * columns + j] ?? 0;
  const step = (i: number, j: number): number => (expected[i - 1] === was[j - 1] ? 0 : 1);
  for (let i = 0; i < rows; i += 1)
    for (let j = 0; j < columns; j += 1) {
      const ways = [i === 0 && j === 0 ? 0 : Infinity];
      if (i > 0 && j > 0) ways.push(at(i - 1, j - 1) + step(i, j));
      if (i > 0) ways.push(at(i - 1, j) + 1);
      if (j > 0) ways.push(at(i, j - 1) + 1);
      cost[i * columns + j] = Math.min(...ways);
    }
  let [i, j] = [
    whole ? expected.length : cheapestRow(rows, (row) => at(row, was.length)),
    was.length,
  ];
  const places: Compared[] = [];
  while (i > 0 || j > 0) {
    const here = at(i, j);
    const [is = '', heard = ''] = [expected[i - 1], was[j - 1]];
    if (i > 0 && j > 0 && here === at(i - 1, j - 1) + step(i, j)) {
      places.push({ at: i - 1, is, was: heard, how: howOf(is, heard, given[j - 1]) });
      [i, j] = [i - 1, j - 1];
    } else if (i > 0 && here === at(i - 1, j) + 1) {
      places.push({ at: i - 1, is, was: '', how: 'missing' });
      i -= 1;
    } else {
      places.push({ at: i, is: '', was: heard, how: 'extra' });
      j -= 1;
    }
  }
  return places.reverse();
}

function howOf(is: string, was: string, symbol: number | undefined): Compared['how'] {
  if (is === was) return 'same';
  return symbol === unreadable ? 'unreadable' : 'wrong';
}

/** The row with the least cost; of equal ones the one furthest on, so that less seems extra. */
function cheapestRow(rows: number, cost: (row: number) => number): number {
  let best = 0;
  for (let row = 1; row < rows; row += 1) if (cost(row) <= cost(best)) best = row;
  return best;
}
