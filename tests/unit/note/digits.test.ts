/** What `digits.ts` promises, measured; seeds are in the messages. */
import { describe, expect, it, test } from 'vitest';
import { codeLengths, dataSymbols, protect } from '../../../src/note/blocks.ts';
import { areDigits, repairDigits } from '../../../src/note/digits.ts';
import { digitGroups, digitsOf } from '../../../src/note/spelling.ts';
import { groupedText, unreadable } from '../../../src/note/symbols.ts';
import type { NoteCode } from '../../../src/note/types.ts';
import { cases } from '../../support/sample.ts';
import { makeRandom, type Random } from './random.ts';

const CODES = cases(40, 400);
const someCode = (random: Random, length = 16) =>
  protect(random.symbols(dataSymbols(length)), length);
const digits = (code: Uint8Array) => Uint8Array.from(digitsOf(groupedText(code)), Number);
/** The code a repair ends in, or the code of the problem. */
function outcome(given: Uint8Array): string {
  const found = repairDigits(given);
  return found.ok ? found.value.code.join() : found.error.code;
}
/** So many digits at different places, each made another one. */
function wrong(given: Uint8Array, count: number, random: Random): Uint8Array {
  const spoiled = given.slice();
  for (const at of random.places(count, given.length))
    spoiled[at] = ((given[at] ?? 0) + 1 + random.below(9)) % 10;
  return spoiled;
}

it('is two digits a character, 00 to 31, in groups of five', () => {
  // By hand, from Crockford's alphabet: 0 is 0, A 10, K 19, Z 31.
  expect(digitsOf('0AKZ')).toBe('00101931');
  expect(digitGroups('0AKZ-0AKZ' as NoteCode)).toEqual(['00101', '93100', '10193', '1']);
});

test(`of ${String(CODES)} codes of each length every one is read back, and told from letters`, () => {
  const random = makeRandom(20);
  for (const length of codeLengths)
    for (let i = 0; i < CODES / 4; i += 1) {
      const code = someCode(random, length);
      expect(areDigits(digits(code))).toBe(true);
      expect(areDigits(code)).toBe(false);
      expect(repairDigits(digits(code))).toEqual({
        ok: true,
        value: { code, places: [], spare: 6 },
      });
    }
});

describe('damage', () => {
  const random = makeRandom(21);
  const codes = Array.from({ length: CODES }, () => someCode(random));

  test('of any one digit, and of any two neighbors swapped, is repaired and named', () => {
    let tried = 0;
    for (const code of codes.slice(0, CODES / 4)) {
      const right = digits(code);
      for (const [at, value] of right.entries()) {
        for (let digit = 0; digit < 10; digit += 1) {
          if (digit === value) continue;
          const found = repairDigits(right.with(at, digit));
          const place = { at, was: String(digit), is: String(value), how: 'wrong' };
          expect(found, `seed 21: ${code.join()} at ${String(at)}`).toMatchObject({
            value: { code, places: [place] },
          });
          tried += 1;
        }
        const next = right[at + 1];
        if (next === undefined || next === value) continue;
        const found = repairDigits(right.with(at, next).with(at + 1, value));
        expect(found).toMatchObject({ value: { code, places: [{ how: 'swapped' }, {}] } });
      }
    }
    expect(tried).toBe((CODES / 4) * 32 * 9);
  });

  test('of one digit lost or one too many ends in the code, or is refused', () => {
    let repaired = 0;
    for (const code of codes) {
      const right = digits(code);
      for (const at of right.keys()) {
        const lost = outcome(right.filter((_, i) => i !== at));
        const extra = outcome(
          Uint8Array.of(...right.subarray(0, at), random.below(10), ...right.subarray(at)),
        );
        for (const end of [lost, extra]) expect([code.join(), 'ambiguous']).toContain(end);
        repaired += lost === code.join() ? 1 : 0;
      }
    }
    expect(repaired / (CODES * 32)).toBeGreaterThan(0.99);
  });

  // Theory: another code only from five wrong digits on. Counted of 300,000: of five 1, of six 13.
  test.each([
    [2, 1],
    [3, 0],
    [4, 0],
  ])('of %i wrong digits never ends in another code', (count, repaired) => {
    let right = 0;
    const runs = cases(3_000, 400_000);
    for (let run = 0; run < runs; run += 1) {
      const code = codes[run % codes.length] ?? someCode(random);
      const end = outcome(wrong(digits(code), count, random));
      expect(['too-damaged', code.join()], `seed 21 run ${String(run)}`).toContain(end);
      right += end === 'too-damaged' ? 0 : 1;
    }
    expect(right / runs).toBeGreaterThanOrEqual(repaired);
  });

  test('of digits that could not be read is filled in, and the digit beside one has to fit', () => {
    const [code = new Uint8Array()] = codes;
    const given = digits(code).with(0, unreadable).with(9, unreadable);
    expect(outcome(given)).toBe(code.join());
    expect(outcome(given.with(1, ((given[1] ?? 0) + 1) % 10))).toBe('too-damaged');
    const five = [0, 2, 4, 6, 8].reduce((all, at) => all.with(at, unreadable), digits(code));
    expect(outcome(five)).toBe('too-damaged');
  });

  it('of more than one digit in number is no reading', () => {
    expect(repairDigits(new Uint8Array(35))).toEqual({
      ok: false,
      error: { code: 'wrong-length', given: 35, nearest: [32, 40] },
    });
  });
});
