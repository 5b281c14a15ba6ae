/**
 * The second reading of a code: the same symbols as decimal digits, two a symbol, 00 to 31, in
 * groups of five. For people who share no language, and for the keys of a telephone. It is no second
 * code: the check symbols are those of the letters, and cover it.
 *
 * Two digits a symbol, where 16 bits would go into five digits, so that a wrong digit damages one
 * symbol, as a wrong letter does. What `repair.ts` promises of w wrong and e unreadable characters
 * then holds of digits: a pair above 31 is a symbol known to be bad. Two check symbols are left to
 * confirm each repair (t = 2 for e = 0, t = 1 for e ≤ 2, t = 0 for e ≤ 4), so another code can come
 * out only when w + e + t ≥ 7: of four wrong digits, which damage at most four symbols, never. One
 * or two wrong digits, and two neighbors swapped, are always repaired.
 */
import { fail, ok, type Result } from '../result.ts';
import { codeLengths, correctCode, shortest } from './blocks.ts';
import { isSwap, onlyOne, type Repair } from './repair.ts';
import { digitText } from './spelling.ts';
import { alphabet, characterOf, unreadable } from './symbols.ts';
import type { CodeEdit, ReadProblem } from './types.ts';

/** Symbols known to be bad that two check symbols are left over from. */
const MOST_BAD = 4;

const lengths = codeLengths.map((symbols) => 2 * symbols);

/**
 * Whether symbol values somebody gave can be digits: all are, or unreadable, and they are as many as
 * the shortest code has, or one fewer. A code all of whose characters are digits has fewer: by its
 * length it is told apart, but for 40 characters and more, of which one in 10²⁰ has no letter.
 */
export const areDigits = (given: Uint8Array): boolean =>
  given.length >= 2 * shortest - 1 && given.every((value) => value < 10 || value === unreadable);

/** From the digits somebody gave to the one valid code they can have meant; `at` counts digits. */
export function repairDigits(given: Uint8Array): Result<Repair, ReadProblem> {
  const { length } = given;
  if (lengths.includes(length)) {
    const fixed = corrected(given, MOST_BAD);
    if (!fixed) return fail({ code: 'too-damaged', given: length });
    return ok({ ...fixed, places: changes(given, fixed.code) });
  }
  if (lengths.includes(length + 1)) {
    // One dropped: the place it is missing from is tried everywhere, and nothing else may be bad.
    const found = [...given, 0].flatMap((_, at): Repair[] => {
      const word = Uint8Array.of(...given.subarray(0, at), unreadable, ...given.subarray(at));
      const fixed = corrected(word, 1, 0);
      const is = fixed && digitText(fixed.code).charAt(at);
      return is ? [{ ...fixed, places: [{ at, was: '', is, how: 'dropped' }] }] : [];
    });
    return onlyOne(found, length);
  }
  if (lengths.includes(length - 1)) {
    const found = [...given].flatMap((value, at): Repair[] => {
      const fixed = corrected(
        given.filter((_, i) => i !== at),
        0,
        0,
      );
      return fixed
        ? [{ ...fixed, places: [{ at, was: characterOf(value), is: '', how: 'added' }] }]
        : [];
    });
    return onlyOne(found, length);
  }
  const nearest = [
    lengths.findLast((whole) => whole < length),
    lengths.find((whole) => whole > length),
  ].filter((whole) => whole !== undefined);
  return fail({ code: 'wrong-length', given: length, nearest });
}

/**
 * The code of as many digits, where that is near enough.
 * @param mostBad symbols that may be known to be bad
 * @param most symbols that may be wrong besides; by default what leaves two check symbols
 */
function corrected(
  given: Uint8Array,
  mostBad: number,
  most?: number,
): Pick<Repair, 'code' | 'spare'> | undefined {
  const pairs = Array.from({ length: given.length / 2 }, (_, i) => given.slice(2 * i, 2 * i + 2));
  const values = pairs.map(([tens = 0, ones = 0]) =>
    tens === unreadable || ones === unreadable ? unreadable : 10 * tens + ones,
  );
  const bad = [...values.keys()].filter((at) => (values[at] ?? 0) >= alphabet.length);
  if (bad.length > mostBad) return undefined;
  const wrong = most ?? (bad.length === 0 ? 2 : bad.length <= 2 ? 1 : 0);
  const fixed = correctCode(Uint8Array.from(values), bad, wrong);
  if (!fixed) return undefined;
  // Of a symbol with one unreadable digit the other one has to be right.
  const digits = digitText(fixed.code);
  const holds = [...given].every((value, at) => {
    const hole = given[at ^ 1] === unreadable && value !== unreadable;
    return !hole || digits.charAt(at) === String(value);
  });
  return holds ? fixed : undefined;
}

function changes(given: Uint8Array, code: Uint8Array): CodeEdit[] {
  const places = [...digitText(code)].flatMap((is, at): CodeEdit[] => {
    const was = characterOf(given[at] ?? unreadable);
    return was === is ? [] : [{ at, was, is, how: was === '?' ? 'unreadable' : 'wrong' }];
  });
  return isSwap(places) ? places.map((place) => ({ ...place, how: 'swapped' })) : places;
}
