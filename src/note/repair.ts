/**
 * From the symbols somebody gave to the one valid code they can have meant.
 *
 * Of one length, valid codes differ in at least 7 places of a block. So with w wrong
 * and e unreadable characters and at most t corrected, another code than the true one
 * can only come out when w + e + t ≥ 7. The rules below keep to t = 2 for e = 0, t = 1
 * for e ≤ 2, t = 0 beyond; the first that breaks is 5 wrong, 4 wrong with 1 or 2
 * unreadable (5 or 6 bad ones), 4 with 3, and so on: no 4 bad characters are ever taken
 * for another code, and 3 or 4 wrong ones (2 or 3 beside unreadable ones) are past t, so
 * they are refused. Two blocks share one t, so the same holds for the whole.
 *
 * One exception: three wrong characters and none unreadable are repaired where each of the three
 * sounds like what it becomes (`sound.ts`; 4.06 mates a character on average). No check symbol is
 * left then, the ear stands in for it, so its `spare` is 0: a person compares every character.
 * The price, for 16 characters (computed and measured in `repair.test.ts`):
 * - a random text is within two changes of a code once in 9,300, (1 + 16·31 + 120·31²)/32⁶, and
 *   within three sound-alikes once in 28,700, 560·4.06³/32⁶. Of such codes 1 in 7 is a note;
 * - four wrong characters are taken for another code 1.7 times in 100,000 (of 28: 15): 35·A₇ of
 *   the 1820·31⁴ ways lead within three of one (A₇ = 11440·31 codes at distance 7), and the
 *   three left must sound alike, (4.06/31)³.
 * The gain: of codes read out as bare letters over a telephone, 7 % of letters misheard (Fanty,
 * Cole and Roginski, 1991), all as sound-alikes where there are any, 94.8 % come out right in
 * place of 90.3 %. Where a share s of what is misheard sounds alike, 90.3 % + 7.5 %·s³.
 */
import { fail, ok, type Result } from '../result.ts';
import { codeLengths, correctCode, longest, shortest } from './blocks.ts';
import type { Corrected } from './blocks.ts';
import { checkSymbols } from './reed-solomon.ts';
import { soundAlike } from './sound.ts';
import { characterOf, unreadable } from './symbols.ts';
import type { CodeEdit, ReadProblem } from './types.ts';

/**
 * Most unreadable characters: each takes one check symbol to restore, and one is left to check with.
 * With six and one more wrong, one code in four would come out as another note.
 */
export const mostUnreadable = checkSymbols - 1;

/** A valid code, and what was changed to get it: nothing for an exact one. */
export interface Repair {
  readonly code: Uint8Array;
  readonly places: readonly CodeEdit[];
  readonly spare: number;
}

/** @param given symbol values, `unreadable` among them where somebody could not read one */
export function repair(given: Uint8Array): Result<Repair, ReadProblem> {
  const { length } = given;
  if (length === 0) return fail({ code: 'empty' });
  if (length < shortest - 1) return fail({ code: 'too-short', given: length, least: shortest });
  if (length > longest + 1) return fail({ code: 'too-long', given: length, most: longest });
  const holes = unreadablePlaces(given);
  if (codeLengths.includes(length)) return sameLength(given, holes);
  const off = codeLengths.includes(length + 1)
    ? dropped
    : codeLengths.includes(length - 1)
      ? added
      : undefined;
  // A missing character among unreadable ones is not looked for: too little would be left to check.
  if (!off || holes.length > 0) {
    const below = codeLengths.findLast((whole) => whole < length);
    const above = codeLengths.find((whole) => whole > length);
    const nearest = [below, above].filter((whole) => whole !== undefined);
    return fail({ code: 'wrong-length', given: length, nearest });
  }
  return onlyOne(off(given), length);
}

/**
 * What was given beside what it is taken for, place by place; an added character before the place it
 * stood at.
 * @param signs the code, or its digits
 */
export function beside(signs: string, edits: readonly CodeEdit[]): Omit<CodeEdit, 'how'>[] {
  const places = [...signs.replaceAll('-', '')].map(
    (is, at) => edits.find((edit) => edit.how !== 'added' && edit.at === at) ?? { at, is, was: is },
  );
  for (const edit of edits) if (edit.how === 'added') places.splice(edit.at, 0, edit);
  return places;
}

function unreadablePlaces(given: Uint8Array): number[] {
  return [...given.keys()].filter((at) => given[at] === unreadable);
}

function sameLength(given: Uint8Array, holes: readonly number[]): Result<Repair, ReadProblem> {
  if (holes.length > mostUnreadable) {
    return fail({ code: 'too-many-unreadable', given: holes.length, most: mostUnreadable });
  }
  const most = holes.length === 0 ? 2 : holes.length <= 2 ? 1 : 0;
  const fixed =
    correctCode(given, holes, most) ?? (holes.length === 0 ? threeAlike(given) : undefined);
  if (!fixed) return fail({ code: 'too-damaged', given: given.length });
  return ok({ ...fixed, places: changes(given, fixed.code) });
}

/**
 * The code three changes away, if all three sound alike. At most one code is that near, and erasing
 * any of its three places finds it: the first code found is the only one there is.
 */
function threeAlike(given: Uint8Array): Corrected | undefined {
  for (const at of given.keys()) {
    const fixed = correctCode(given, [at], 2);
    if (!fixed) continue;
    const { code } = fixed;
    const alike = code.every((is, i) => is === given[i] || soundAlike(is, given[i] ?? unreadable));
    return alike ? { code, spare: 0 } : undefined;
  }
  return undefined;
}

/** Every code that gives this one by losing one character. */
function dropped(given: Uint8Array): Repair[] {
  const found: Repair[] = [];
  for (let at = 0; at <= given.length; at += 1) {
    const word = new Uint8Array(given.length + 1);
    word.set(given.subarray(0, at));
    word.set(given.subarray(at), at + 1);
    const fixed = correctCode(word, [at], 0);
    if (!fixed) continue;
    const is = characterOf(fixed.code[at] ?? unreadable);
    found.push({ ...fixed, places: [{ at, was: '', is, how: 'dropped' }] });
  }
  return found;
}

/** Every code that gives this one by a character too many. */
function added(given: Uint8Array): Repair[] {
  const found: Repair[] = [];
  for (let at = 0; at < given.length; at += 1) {
    const word = new Uint8Array(given.length - 1);
    word.set(given.subarray(0, at));
    word.set(given.subarray(at + 1), at);
    const fixed = correctCode(word, [], 0);
    if (!fixed) continue;
    const was = characterOf(given[at] ?? unreadable);
    found.push({ ...fixed, places: [{ at, was, is: '', how: 'added' }] });
  }
  return found;
}

/** One of a run of equal characters lost or doubled is found once a place: that is one code. */
export function onlyOne(found: readonly Repair[], length: number): Result<Repair, ReadProblem> {
  const different = new Map(found.map((repair) => [repair.code.join(), repair]));
  const [first] = different.values();
  if (!first) return fail({ code: 'too-damaged', given: length });
  return different.size === 1 ? ok(first) : fail({ code: 'ambiguous', count: different.size });
}

function changes(given: Uint8Array, code: Uint8Array): CodeEdit[] {
  const places: CodeEdit[] = [];
  for (const [at, is] of code.entries()) {
    const was = given[at] ?? unreadable;
    if (was === is) continue;
    const how = was === unreadable ? 'unreadable' : 'wrong';
    places.push({ at, was: characterOf(was), is: characterOf(is), how });
  }
  return isSwap(places) ? places.map((place) => ({ ...place, how: 'swapped' as const })) : places;
}

/** Whether two neighbors took each other's place. */
export function isSwap(places: readonly CodeEdit[]): boolean {
  const [one, two, more] = places;
  if (!one || !two || more) return false;
  return two.at === one.at + 1 && one.was === two.is && two.was === one.is;
}
