/** The repair promises, measured on symbols: seeds are in the messages. */
import { describe, expect, test } from 'vitest';
import { codeLengths, correctCode, dataSymbols, protect } from '../../../src/note/blocks.ts';
import { beside, isSwap, onlyOne, repair } from '../../../src/note/repair.ts';
import { soundAlike, soundMates } from '../../../src/note/sound.ts';
import { characterOf, unreadable } from '../../../src/note/symbols.ts';
import type { CodeEdit } from '../../../src/note/types.ts';
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
        expect(place).toMatchObject({ was: '', is: characterOf(code[at] ?? 0), how: 'dropped' });
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
          const given = inserted(code, at, symbol);
          const found = repair(given);
          const [place, ...more] = found.ok ? found.value.places : [];
          const told = place?.how === 'added' && place.is === '' && more.length === 0;
          const named = told && place.was === characterOf(given[place.at] ?? 0);
          if (!found.ok || !same(found.value.code, code) || !named)
            expect.unreachable(`seed 200: ${code.join()} with ${symbol} at ${at}`);
        }
      }
    }
  });

  test.each([1, 2, 3, 4, 5])('with %i unreadable characters is restored', (count) => {
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

/** Whether what was given at a place sounds like the code's own character. */
function alike(given: Uint8Array, code: Uint8Array, at: number): boolean {
  return soundAlike(given[at] ?? 0, code[at] ?? 0);
}

/** The code with this character heard as one that sounds like it, if any does. */
function misheard(code: Uint8Array, at: number, random: Random): number | undefined {
  const mates = soundMates(code[at] ?? 0);
  return mates.length > 0 ? random.pick(mates) : undefined;
}

describe('a third wrong character', () => {
  test('is repaired where all three sound like what they should be, as a weak proposal', () => {
    const random = makeRandom(300);
    let tried = 0;
    for (const code of someCodes(random))
      for (let run = 0; run < 50; run += 1) {
        const given = code.slice();
        for (const at of random.places(code.length, code.length)) {
          if (given.filter((symbol, i) => symbol !== code[i]).length === 3) break;
          given[at] = misheard(code, at, random) ?? given[at] ?? 0;
        }
        const wrong = [...given.keys()].filter((at) => given[at] !== code[at]);
        const found = repair(given);
        expect(found, `seed 300: ${given.join()}`).toEqual({
          ok: true,
          value: {
            code,
            spare: 0,
            places: wrong.map((at) => ({
              at,
              was: characterOf(given[at] ?? 0),
              is: characterOf(code[at] ?? 0),
              how: 'wrong',
            })),
          },
        });
        tried += 1;
      }
    expect(tried).toBe(50 * COUNT);
  });

  test('is refused where one of them sounds like nothing of the kind, or beside an unreadable one', () => {
    const random = makeRandom(301);
    const strange = [...Array(32).keys()];
    for (const code of someCodes(random))
      for (let run = 0; run < 50; run += 1) {
        const places = random
          .places(code.length, code.length)
          .filter((at) => soundMates(code[at] ?? 0).length > 0)
          .slice(0, 4);
        const given = code.slice();
        for (const at of places.slice(0, 3)) given[at] = misheard(code, at, random) ?? 0;
        const [one = 0, , , other = 0] = places;
        const unclear = given.slice();
        unclear[other] = unreadable;
        expect(outcome(unclear), `seed 301: ${unclear.join()}`).toBe('too-damaged');
        const others = strange.filter((symbol) => {
          const own = code[one] ?? 0;
          return symbol !== own && !soundAlike(symbol, own);
        });
        given[one] = random.pick(others);
        expect(outcome(given), `seed 301: ${given.join()}`).toBe('too-damaged');
      }
  });
});

describe('how often a repair is right and how often it is not, as `repair.ts` tells', () => {
  const choose = (n: number, k: number): number => (k === 0 ? 1 : (choose(n - 1, k - 1) * n) / k);
  const symbols = [...Array(32).keys()];
  const mates = symbols.reduce((sum, symbol) => sum + soundMates(symbol).length, 0) / 32;
  /** Texts of 16 characters within these changes of one code, of 32^6 for each code. */
  const near = [0, 1, 2].reduce((sum, k) => sum + choose(16, k) * 31 ** k, 0) / 32 ** 6;
  const third = (choose(16, 3) * mates ** 3) / 32 ** 6;
  /** Four wrong: codes 7 places off (a maximum-distance-separable code has C(16, 7)·31 of them). */
  const four =
    ((choose(16, 7) * 31 * choose(7, 4)) / (choose(16, 4) * 31 ** 4)) * (mates / 31) ** 3;

  /** Whether a count is one of chance `p`: at most four standard deviations off. */
  const isChance = (count: number, runs: number, p: number): boolean =>
    Math.abs(count - runs * p) <= 4 * Math.sqrt(runs * p * (1 - p)) + 1;

  test('the figures', () => {
    expect(mates).toBeCloseTo(4.06, 2);
    expect(near).toBeCloseTo(1.08e-4, 6);
    expect(third).toBeCloseTo(3.5e-5, 6);
    expect(four).toBeCloseTo(1.7e-5, 6);
  });

  test('a random text taken for a code', () => {
    const random = makeRandom(302);
    const runs = cases(150_000, 3_000_000);
    let [few, three] = [0, 0];
    for (let run = 0; run < runs; run += 1) {
      const found = repair(random.symbols(16));
      if (!found.ok) continue;
      if (found.value.places.length === 3) three += 1;
      else few += 1;
    }
    expect(isChance(few, runs, near), `seed 302: ${few} of ${runs}`).toBe(true);
    expect(isChance(three, runs, third), `seed 302: ${three} of ${runs}`).toBe(true);
    // So few of them say little: of texts three changes from a code, this share must be taken.
    let taken = 0;
    for (let run = 0; run < runs; run += 1) {
      const code = protect(random.symbols(10), 16);
      if (repair(spoil(code, random.places(3, 16), random)).ok) taken += 1;
    }
    const share = (third * 32 ** 6) / (choose(16, 3) * 31 ** 3);
    expect(isChance(taken, runs, share), `seed 302: ${taken} of ${runs}`).toBe(true);
  });

  test('four wrong characters taken for another code', () => {
    // Two codes seven places apart, and the first with four of the seven as in the other.
    const random = makeRandom(304);
    const runs = cases(100_000, 1_000_000);
    let taken = 0;
    for (let run = 0; run < runs; run += 1) {
      const code = protect(random.symbols(10), 16);
      const places = random.places(7, 16);
      const other = code.slice();
      other[places[0] ?? 0] = ((code[places[0] ?? 0] ?? 0) + 1 + random.below(31)) % 32;
      for (const at of places.slice(1)) other[at] = unreadable;
      const near7 = correctCode(other, places.slice(1), 0)?.code ?? expect.unreachable();
      const given = code.slice();
      for (const at of places.slice(0, 4)) given[at] = near7[at] ?? 0;
      const found = outcome(given);
      if (found === near7.join()) taken += 1;
      else if (found !== 'too-damaged') expect.unreachable(`seed 304: ${given.join()}`);
    }
    expect(isChance(taken, runs, (mates / 31) ** 3), `seed 304: ${taken} of ${runs}`).toBe(true);
  });

  test('bare letters over the telephone', () => {
    // 7 % of letters heard wrong (Fanty, Cole and Roginski, 1991), each as one that sounds like it
    // where there is one: of 16 at most two wrong in 90.3 %, three in 7.5 %.
    const heard = (k: number): number => choose(16, k) * 0.07 ** k * 0.93 ** (16 - k);
    const share = symbols.filter((symbol) => soundMates(symbol).length > 0).length / 32;
    const before = heard(0) + heard(1) + heard(2);
    const now = before + heard(3) * share ** 3;
    expect(before).toBeCloseTo(0.903, 3);
    expect(now).toBeCloseTo(0.948, 3);
    const random = makeRandom(303);
    const runs = cases(20_000, 500_000);
    let [right, wrong] = [0, 0];
    for (let run = 0; run < runs; run += 1) {
      const code = protect(random.symbols(10), 16);
      const given = code.map((symbol, at) =>
        random.below(100) < 7
          ? (misheard(code, at, random) ?? (symbol + 1 + random.below(31)) % 32)
          : symbol,
      );
      const found = outcome(given);
      if (found === code.join()) right += 1;
      else if (found.includes(',')) wrong += 1;
    }
    expect(isChance(right, runs, now), `seed 303: ${right} of ${runs}`).toBe(true);
    // Four or more misheard, 2.2 % of all, within reach of another code: the sound helps it along.
    expect(wrong / runs, `seed 303: ${wrong} of ${runs}`).toBeLessThan(2e-4);
  });
});

describe('cases at random', () => {
  // A slip in 1 of 10,000 comes up; with EVERY=1, in 1 of 330,000. Two wrong characters of a code of
  // the usual length are all tried above; here longer codes come in.
  const runs = cases(30_000, 1_000_000);

  test.each([
    [2, { right: runs, wrong: 0, refused: 0 }],
    [3, { right: 0, wrong: 0, refused: runs }],
    [4, { right: 0, wrong: 0, refused: runs }],
  ])('%i wrong characters that do not all sound alike', (wrong, expected) => {
    const seed = 1000 + wrong;
    const counted = tally(seed, runs, (code, random) => {
      const places = random.places(wrong, code.length);
      for (;;) {
        const given = spoil(code, places, random);
        if (wrong === 2 || places.some((at) => !alike(given, code, at))) return given;
      }
    });
    // Three sound-alikes may lead to another code: of four wrong ones 1.7 in 100,000 of 16 characters,
    // 4.2 of 20, 8.6 of 24, 15 of 28, 0.3 of 36; of the lengths in `tally` 4.8. Five deviations more.
    const chance = 4.8e-5 * runs;
    if (wrong === 4)
      expect(counted.wrong, `seed ${seed}`).toBeLessThan(chance + 5 * Math.sqrt(chance) + 1);
    else expect(counted, `seed ${seed}`).toEqual(expected);
    expect(counted.right, `seed ${seed}`).toBe(expected.right);
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
    if (unread > 5) expect(counted.refused, message).toBe(runs);
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

  test('more than five unreadable characters are refused', () => {
    const given = protect(random.symbols(10), 16).fill(unreadable, 0, 6);
    const error = { code: 'too-many-unreadable', given: 6, most: 5 };
    expect(repair(given)).toEqual({ ok: false, error });
  });

  test('a lost character beside an unreadable one is not guessed', () => {
    const given = protect(random.symbols(10), 16).subarray(1).fill(unreadable, 0, 1);
    expect(outcome(given)).toBe('wrong-length');
  });
});

describe('what a repair tells', () => {
  const edit = (at: number, was: string, is: string, how: CodeEdit['how'] = 'wrong'): CodeEdit => ({
    ...{ at, was, is, how },
  });

  test('stands beside the code, an added character before the place it stood at', () => {
    const [wrong, added] = [edit(1, 'X', 'B'), edit(2, 'Y', '', 'added')];
    const right = (at: number, is: string) => ({ at, is, was: is });
    const all = [right(0, 'A'), wrong, added, right(2, 'C'), right(3, 'D'), right(4, 'E')];
    expect(beside('ABCD-E', [wrong, added])).toEqual(all);
    expect(beside('A', [])).toEqual([right(0, 'A')]);
  });

  test.each<[boolean, readonly CodeEdit[]]>([
    [true, [edit(3, 'A', 'B'), edit(4, 'B', 'A')]],
    [false, [edit(3, 'A', 'B'), edit(5, 'B', 'A')]],
    [false, [edit(3, 'A', 'B'), edit(4, 'C', 'A')]],
    [false, [edit(3, 'A', 'B'), edit(4, 'B', 'C')]],
    [false, [edit(3, 'A', 'B')]],
    [false, []],
    [false, [edit(3, 'A', 'B'), edit(4, 'B', 'A'), edit(5, 'A', 'B')]],
  ])('is a swap (%s) of two neighbors only', (swap, places) => {
    expect(isSwap(places)).toBe(swap);
  });

  test('is nothing where two codes are as near', () => {
    const [one, other] = [1, 2].map((symbol) => ({
      code: Uint8Array.of(symbol),
      places: [],
      spare: 0,
    }));
    if (!one || !other) throw new Error('no codes');
    expect(onlyOne([one, one], 15)).toEqual({ ok: true, value: one });
    expect(onlyOne([one, other], 15)).toEqual({
      ok: false,
      error: { code: 'ambiguous', count: 2 },
    });
    expect(onlyOne([], 15)).toEqual({ ok: false, error: { code: 'too-damaged', given: 15 } });
  });
});
