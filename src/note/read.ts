/** Reading note codes: the pieces of `write.ts` backwards, with repair between them. */
import { fail, ok, type Result } from '../result.ts';
import { codeLengths, longest, unprotect } from './blocks.ts';
import { guideOfNumber, numberToNote } from './fields.ts';
import type { Codebooks } from './codebook.ts';
import { areDigits, repairDigits } from './digits.ts';
import { repair, type Repair } from './repair.ts';
import { groupedText, symbolsToNumber } from './symbols.ts';
import { plainSymbols, spelledSymbols, tokensOf } from './typed.ts';
import type { Note, NoteCode, Reading, ReadProblem } from './types.ts';
import { lengthFor } from './write.ts';

/** Most characters looked at: 60 words as long as Terrathree, a separator after each, are 660. */
export const longestInput = 700;

/**
 * Read a code as typed, pasted or spelled out. Never throws; time is bounded by
 * `longestInput`. A repaired reading is a proposal for a person to confirm.
 */
export function readCode(input: string, codebooks: Codebooks): Reading {
  if (input.length > longestInput) {
    return refused({ code: 'too-long', given: input.length, most: longest });
  }
  const plain = readSymbols(plainSymbols(input), codebooks);
  if (plain.kind === 'exact') return plain;
  const symbols = spelledSymbols(input);
  const reading = symbols ? choose(plain, readSymbols(symbols, codebooks)) : plain;
  return reading.kind === 'refused' ? (shortGroup(input, codebooks) ?? reading) : reading;
}

/**
 * The guide of a code without a mistake, told before any codebook is there; undefined for any other
 * text, and for a code of another release.
 */
export function guideOfCode(
  input: string,
  release: number,
  guides: readonly string[],
): string | undefined {
  if (input.length > longestInput) return undefined;
  const plain = plainSymbols(input);
  const given = plain.ok ? plain : spelledSymbols(input);
  const code = given?.ok ? repair(given.value) : undefined;
  if (!code?.ok || code.value.places.length > 0) return undefined;
  const data = unprotect(code.value.code);
  return guideOfNumber(symbolsToNumber(data, data.length), release, guides);
}

/**
 * A code too damaged as a whole of which one group, as it was written, lacks a character: an
 * unreadable one is tried in each of its places, so that one more may be wrong (`repair.ts`).
 * Undefined where no group or several are short. The price: four tries let a random text pass
 * 4·(1 + 15·31)/32⁵ of the time, once in 18,000, and it is a person who confirms.
 */
function shortGroup(input: string, codebooks: Codebooks): Reading | undefined {
  const groups = tokensOf(input).map(({ text }) => text);
  const short = groups.findIndex((group) => group.length === 3);
  const others = groups.filter((_, i) => i !== short);
  if (short < 0 || others.some(({ length }) => length !== 4)) return undefined;
  if (!codeLengths.includes(4 * groups.length)) return undefined;
  const group = groups[short] ?? '';
  const found = [0, 1, 2, 3].flatMap((place) => {
    const filled = `${group.slice(0, place)}?${group.slice(place)}`;
    const reading = readSymbols(plainSymbols(groups.with(short, filled).join('-')), codebooks);
    if (reading.kind !== 'repaired') return [];
    const at = 4 * short + place;
    const places = reading.places.map((edit) =>
      edit.at === at ? { ...edit, was: '', how: 'dropped' as const } : edit,
    );
    return [{ ...reading, places }];
  });
  found.sort((a, b) => a.places.length - b.places.length);
  const codes = new Set(found.map(({ code }) => code));
  if (codes.size > 1) return refused({ code: 'ambiguous', count: codes.size });
  return found[0] ?? refused({ code: 'short-group', group: short + 1, given: group.length });
}

/**
 * A text that can be read two ways, as characters or spelled, as characters or digits: an exact
 * reading wins, two repairs are one too many, and a refusal is told of the second. A damaged plain code gets a second
 * chance as words only when most of its groups are words: 18 of 32⁴ groups are.
 */
function choose(plain: Reading, second: Reading): Reading {
  if (plain.kind === 'refused' || second.kind === 'exact') return second;
  return second.kind === 'repaired' ? refused({ code: 'ambiguous', count: 2 }) : plain;
}

function readSymbols(given: Result<Uint8Array, ReadProblem>, codebooks: Codebooks): Reading {
  if (!given.ok) return refused(given.error);
  const characters = readingOf(repair(given.value), codebooks);
  if (characters.kind === 'exact' || !areDigits(given.value)) return characters;
  const digits = readingOf(repairDigits(given.value), codebooks);
  return choose(characters, digits.kind === 'repaired' ? { ...digits, digits: true } : digits);
}

function readingOf(repaired: Result<Repair, ReadProblem>, codebooks: Codebooks): Reading {
  if (!repaired.ok) return refused(repaired.error);
  const { code: symbols, places, spare } = repaired.value;
  const note = noteOf(symbols, codebooks);
  if (!note.ok) return refused(note.error);
  const code = groupedText(symbols) as NoteCode;
  return places.length === 0
    ? { kind: 'exact', code, note: note.value }
    : { kind: 'repaired', code, note: note.value, places, spare };
}

/** A longer code than its number needs would be a second code for the same note. */
function noteOf(symbols: Uint8Array, codebooks: Codebooks): Result<Note, ReadProblem> {
  const data = unprotect(symbols);
  const number = symbolsToNumber(data, data.length);
  if (lengthFor(number) !== symbols.length) return fail({ code: 'impossible', field: 'length' });
  const note = numberToNote(number, codebooks);
  return note.ok ? ok(note.value) : note;
}

function refused(problem: ReadProblem): Reading {
  return { kind: 'refused', problem };
}
