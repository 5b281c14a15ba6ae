/** Writing note codes: note → number → symbols → checked symbols → grouped text. */
import { fail, ok, type Result } from '../result.ts';
import { codeLengths, dataSymbols, longest, protect } from './blocks.ts';
import { noteToNumber } from './fields.ts';
import type { Codebooks } from './codebook.ts';
import { groupedText, numberToSymbols } from './symbols.ts';
import type { Note, NoteCode, WriteProblem } from './types.ts';

/** The shortest length whose data symbols hold a number, undefined for none. */
export function lengthFor(number: bigint): number | undefined {
  return codeLengths.find((length) => number >> BigInt(5 * dataSymbols(length)) === 0n);
}

/** The code of a note: 16, 20, 24, 28 or 36 to 60 characters in groups of four. */
export function writeCode(note: Note, codebooks: Codebooks): Result<NoteCode, WriteProblem> {
  const number = noteToNumber(note, codebooks);
  if (!number.ok) return number;
  const length = lengthFor(number.value);
  if (length === undefined) {
    const bits = number.value.toString(2).length;
    return fail({ code: 'too-much', bits, most: 5 * dataSymbols(longest) });
  }
  const data = numberToSymbols(number.value, dataSymbols(length));
  return ok(groupedText(protect(data, length)) as NoteCode);
}
