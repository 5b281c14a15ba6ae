/** The repair promises, measured on symbols: seeds are in the messages. */
import { describe, expect, test } from 'vitest';
import { codeLengths, dataSymbols, protect } from '../../../src/note/blocks.ts';
import { repair } from '../../../src/note/repair.ts';
import { characterOf, unreadable } from '../../../src/note/symbols.ts';
import { cases } from '../../support/sample.ts';
import { makeRandom, spoil } from './random.ts';
import type { Random } from './random.ts';

/**
 * 30 codes (with EVERY=1, 200): 10 of the usual length, the others spread over all longer ones. A
 * Reed–Solomon code is linear, so whether damage is repaired depends on the damage alone, not on
 * the code it befalls: more codes than one of each length stand guard for the mask and the tables.
 */
const COUNT = cases(30, 200);

function someCodes(random: Random): Uint8Array[] {
  return Array.from({ length: COUNT }, (_, i) => {
    const length = i < 0.4 * COUNT ? 16 : (codeLengths[1 + (i % (codeLengths.length - 1))] ?? 16);
    return protect(random.symbols(dataSymbols(length)), length);
  });
}

/** The code a repair ends in, or the code of the problem. */
function outcome(given: Uint8Array): string {
  const found = repair(given);
  return found.ok ? found.value.code.join() : found.error.code;
}

function without(code: Uint8Array, at: number): Uint8Array {
  return Uint8Array.of(...code.subarray(0, at), ...code.subarray(at + 1));
}

function inserted(code: Uint8Array, at: number, symbol: number): Uint8Array {
  return Uint8Array.of(...code.subarray(0, at), symbol, ...code.subarray(at));
}

function same(a: Uint8Array, b: Uint8Array): boolean {
  return a.length === b.length && a.every((symbol, i) => symbol === b[i]);
}

describe(`every one of ${COUNT} codes`, () => {
  const codes = someCodes(makeRandom(200));

  test('unharmed is exact', () => {
    for (const code of codes) {
      expect(repair(code)).toEqual({ ok: true, value: { code, places: [], spare: 6 } });
    }
  });

  test('with any single character wrong is repaired there', () => {
    let tried = 0;
    for (const code of codes) {
      for (const [at, right] of code.entries()) {
        for (let symbol = 0; symbol < 32; symbol += 1) {
          if (symbol === right) continue;
          const given = code.slice();
          given[at] = symbol;
          const found = repair(given);
          const [place] = found.ok ? found.value.places : [];
          const mended = found.ok && same(found.value.code, code) && found.value.spare === 4;
          if (!mended || place?.at !== at || place.how !== 'wrong') {
            expect.unreachable(`seed 200: ${code.join()} at ${at} to ${symbol}`);
          }
          tried += 1;
        }
      }
    }
    expect(tried).toBeGreaterThan(COUNT * 16 * 31);
  });

  test('with any two neighbours swapped is repaired, and the swap named', () => {
    let tried = 0;
    for (const code of codes) {
      for (let at = 0; at + 1 < code.length; at += 1) {
        const [one = 0, two = 0] = code.subarray(at);
        if (one === two) continue;
        const given = code.slice();
        given.set([two, one], at);
        const found = repair(given);
        expect(found.ok && found.value.code, `seed 200: ${code.join()} at ${at}`).toEqual(code);
        expect(found.ok && found.value.places).toEqual([
          { at, was: characterOf(two), is: characterOf(one), how: 'swapped' },
          { at: at + 1, was: characterOf(one), is: characterOf(two), how: 'swapped' },
        ]);
        tried += 1;
      }
    }
    expect(tried).toBeGreaterThan(COUNT * 14);
  });

  test('with any character lost is repaired', () => {
    for (const code of codes) {
      for (const at of code.keys()) {
        const found = repair(without(code, at));
        const message = `seed 200: ${code.join()} without ${at}`;
        expect(found.ok && found.value.code, message).toEqual(code);
        const [place] = found.ok ? found.value.places : [];
        expect(place?.how).toBe('dropped');
        // Of a run of equal characters any may be named.
        expect(place && code[place.at], message).toBe(code[at]);
      }
    }
  });

  test('with any character added is repaired', () => {
    for (const [i, code] of codes.entries()) {
      // All 32 characters at each place of 20 codes, three of them at each place of the rest.
      for (let at = 0; at <= code.length; at += 1) {
        const symbols =
          i % 10 === 0 ? [...Array(32).keys()] : [i % 32, (i + 11) % 32, code[at] ?? 0];
        for (const symbol of symbols) {
          const found = outcome(inserted(code, at, symbol));
          if (found !== code.join()) {
            expect.unreachable(`seed 200: ${code.join()} with ${symbol} at ${at} gives ${found}`);
          }
        }
      }
    }
  });

  test.each([1, 2, 3, 4, 5, 6])('with %i unreadable characters is restored', (count) => {
    const random = makeRandom(count);
    for (const code of codes) {
      for (let run = 0; run < 20; run += 1) {
        const given = code.slice();
        const places = random.places(count, code.length).toSorted((a, b) => a - b);
        for (const place of places) given[place] = unreadable;
        const found = repair(given);
        expect(found.ok && found.value.code, `seed ${count}: ${given.join()}`).toEqual(code);
        expect(found.ok && found.value.places).toEqual(
          places.map((at) => ({
            at,
            was: '?',
            is: characterOf(code[at] ?? 0),
            how: 'unreadable',
          })),
        );
      }
    }
  });
});

/** Codes of the usual lengths and of two blocks, spoiled at random, judged fast. */
function tally(
  seed: number,
  runs: number,
  spoilt: (code: Uint8Array, random: Random) => Uint8Array,
) {
  const random = makeRandom(seed);
  const pool = [16, 16, 16, 20, 24, 28, 36].flatMap((length) =>
    Array.from({ length: 100 }, () => protect(random.symbols(dataSymbols(length)), length)),
  );
  const count = { right: 0, wrong: 0, refused: 0 };
  for (let run = 0; run < runs; run += 1) {
    const code = random.pick(pool);
    const found = repair(spoilt(code, random));
    if (!found.ok) count.refused += 1;
    else if (same(found.value.code, code)) count.right += 1;
    else count.wrong += 1;
  }
  return count;
}

test('any two wrong characters of a code of the usual length are repaired', () => {
  const code = protect(makeRandom(2).symbols(dataSymbols(16)), 16);
  let tried = 0;
  for (let first = 0; first < 16; first += 1)
    for (let second = first + 1; second < 16; second += 1)
      for (let both = 0; both < 31 * 31; both += 1) {
        const given = code.slice();
        given[first] = (code[first] ?? 0) ^ (1 + (both % 31));
        given[second] = (code[second] ?? 0) ^ (1 + Math.floor(both / 31));
        const found = repair(given);
        if (!found.ok || !same(found.value.code, code)) expect.unreachable(given.join());
        tried += 1;
      }
  expect(tried).toBe(120 * 31 * 31);
});

describe('cases at random', () => {
  // A slip in 1 of 10,000 comes up; with EVERY=1, in 1 of 330,000. Two wrong characters of a code of
  // the usual length are all tried above; here longer codes come in.
  const runs = cases(30_000, 1_000_000);

  test.each([
    [2, { right: runs, wrong: 0, refused: 0 }],
    [3, { right: 0, wrong: 0, refused: runs }],
    [4, { right: 0, wrong: 0, refused: runs }],
  ])('%i wrong characters', (wrong, expected) => {
    const seed = 1000 + wrong;
    const counted = tally(seed, runs, (code, random) =>
      spoil(code, random.places(wrong, code.length), random),
    );
    expect(counted, `seed ${seed}`).toEqual(expected);
  });
});

describe('unreadable and wrong characters together', () => {
  // A slip in 1 of 1,000 of each kind comes up; with EVERY=1, in 1 of 17,000.
  const runs = cases(3000, 50_000);
  const both = [1, 2, 3, 4, 5, 6].flatMap((unread) =>
    [1, 2, 3, 4].map((wrong) => [unread, wrong] as const),
  );

  test.each(both)('%i unreadable, %i wrong', (unread, wrong) => {
    const seed = 10 * unread + wrong;
    const counted = tally(seed, runs, (code, random) => {
      const places = random.places(unread + wrong, code.length);
      const given = spoil(code, places.slice(unread), random);
      for (const place of places.slice(0, unread)) given[place] = unreadable;
      return given;
    });
    const message = `seed ${seed}`;
    const mended = unread <= 2 && wrong === 1;
    expect(counted.right, message).toBe(mended ? runs : 0);
    // At most this many others are corrected beside unreadable ones, as `repair.ts` explains.
    const most = unread <= 2 ? 1 : 0;
    if (unread + wrong + most < 7) expect(counted.wrong, message).toBe(0);
    if (unread + wrong <= 4) expect(counted.wrong, message).toBe(0);
  });
});

describe('lengths', () => {
  const random = makeRandom(7);

  test('of no code are refused with the nearest ones', () => {
    const wrongLength = (given: number, ...nearest: number[]): unknown => ({
      ok: false,
      error: { code: 'wrong-length', given, nearest },
    });
    expect(repair(random.symbols(18))).toEqual(wrongLength(18, 16, 20));
    expect(repair(random.symbols(32))).toEqual(wrongLength(32, 28, 36));
    expect(repair(random.symbols(31))).toEqual(wrongLength(31, 28, 36));
    expect(repair(random.symbols(58))).toEqual(wrongLength(58, 56, 60));
  });

  test('too small or too large are refused with the limits', () => {
    const refused = (length: number): unknown => {
      const found = repair(random.symbols(length));
      return found.ok || found.error;
    };
    expect(refused(0)).toEqual({ code: 'empty' });
    expect(refused(1)).toEqual({ code: 'too-short', given: 1, least: 16 });
    expect(refused(14)).toEqual({ code: 'too-short', given: 14, least: 16 });
    expect(refused(15)).toEqual({ code: 'too-damaged', given: 15 });
    expect(refused(61)).toEqual({ code: 'too-damaged', given: 61 });
    expect(refused(62)).toEqual({ code: 'too-long', given: 62, most: 60 });
  });

  test('more than six unreadable characters are refused', () => {
    const given = protect(random.symbols(10), 16).fill(unreadable, 0, 7);
    const error = { code: 'too-many-unreadable', given: 7, most: 6 };
    expect(repair(given)).toEqual({ ok: false, error });
  });

  test('a lost character beside an unreadable one is not guessed', () => {
    const given = protect(random.symbols(10), 16).subarray(1).fill(unreadable, 0, 1);
    expect(outcome(given)).toBe('wrong-length');
  });
});
