import { parseFragment } from '../address/fragment.ts';
import type { Codebooks } from '../note/codebook.ts';
import { readCode } from '../note/read.ts';
import { scanned } from '../address/scanned.ts';
import type { Reading } from '../note/types.ts';

/** A line as a code: typed, spelled, or the long form's address, of which the code alone is read. */
export function readEntry(text: string, codebooks: Codebooks): Reading {
  const found = scanned(text);
  const code = found && 'fragment' in found ? parseFragment(found.fragment).fragment.code : text;
  return readCode(code ?? text, codebooks);
}
