/** Reading note codes: the pieces of `write.ts` backwards, with repair between them. */
import { fail, ok, type Result } from '../result.ts';
import { longest, unprotect } from './blocks.ts';
import { numberToNote } from './fields.ts';
import type { Codebooks } from './codebook.ts';
import { repair } from './repair.ts';
import { groupedText, symbolsToNumber } from './symbols.ts';
import { plainSymbols, spelledSymbols } from './typed.ts';
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
  return symbols ? choose(plain, readSymbols(symbols, codebooks)) : plain;
}

/**
 * A text that can be read both ways: an exact reading wins, two repairs are one too many,
 * and a refusal is told of the spelled reading. A damaged plain code gets a second
 * chance as words only when most of its groups are words: some 20 of 10⁶ groups are.
 */
function choose(plain: Reading, spelled: Reading): Reading {
  if (plain.kind === 'refused' || spelled.kind === 'exact') return spelled;
  return spelled.kind === 'repaired' ? refused({ code: 'ambiguous', count: 2 }) : plain;
}

function readSymbols(given: Result<Uint8Array, ReadProblem>, codebooks: Codebooks): Reading {
  if (!given.ok) return refused(given.error);
  const repaired = repair(given.value);
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
