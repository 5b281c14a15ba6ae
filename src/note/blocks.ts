/**
 * Checked symbols: data symbols, then the check symbols of one Reed–Solomon block,
 * or of two that take turns symbol by symbol, all under a mask.
 */
import { alphabet, groupSize } from './symbols.ts';
import { addChecks, checkSymbols, correct } from './reed-solomon.ts';

/** Fewest symbols of a code. */
export const shortest = 16;
/** Most symbols of a code: two blocks of at most 31 symbols, in whole groups. */
export const longest = 60;
/** Most symbols in one block; above, six check symbols would guard too much. */
const longestBlock = 28;

/** Symbols of a code of this length that carry data. */
export function dataSymbols(length: number): number {
  return length - checkSymbols * blockCount(length);
}

function blockCount(length: number): number {
  return length > longestBlock ? 2 : 1;
}

/**
 * The lengths codes have: whole groups, each holding more than the one before. (32
 * is missing: its second set of check symbols leaves less room than 28 has.)
 */
export const codeLengths: readonly number[] = makeLengths();

function makeLengths(): number[] {
  const lengths: number[] = [];
  let most = 0;
  for (let length = shortest; length <= longest; length += groupSize) {
    if (dataSymbols(length) <= most) continue;
    lengths.push(length);
    most = dataSymbols(length);
  }
  return lengths;
}

/**
 * The mask: binary digits of π after the point, five to a symbol, read from one symbol
 * later for each further group of the code. Without it a codeword that begins with 0
 * and loses it is a codeword again with a 0 at its end (the code is cyclic), a code of
 * zeros is valid, and the end of a long code can be a valid short one. With it no code
 * that loses a character at one end and gains one at the other is within two changes of
 * another: the tests go through all cases. π because nobody chose it.
 */
const piDigits = '4GZPN245MC4D64RSH8Q06W3K8JJ0JE1256FK3M085VX9HV2EDJ4MAA11WRWD04VQQSA6DKSM';
const mask = Uint8Array.from(piDigits, (digit) => alphabet.indexOf(digit));

/** XOR a word with the mask of its length; doing it twice undoes it. */
export function masked(word: Uint8Array): Uint8Array {
  const from = (word.length - shortest) / groupSize;
  const out = new Uint8Array(word.length);
  for (let i = 0; i < word.length; i += 1) out[i] = (word[i] ?? 0) ^ (mask[from + i] ?? 0);
  return out;
}

/** Data symbols with their check symbols, masked: a code of `length` symbols. */
export function protect(data: Uint8Array, length: number): Uint8Array {
  const word = new Uint8Array(length);
  word.set(data);
  const count = blockCount(length);
  for (let block = 0; block < count; block += 1) {
    const part = takeBlock(word, block, count);
    addChecks(part);
    putBlock(word, part, block, count);
  }
  return masked(word);
}

/** The data symbols, still unchecked, of a code. */
export function unprotect(code: Uint8Array): Uint8Array {
  return masked(code).subarray(0, dataSymbols(code.length));
}

/** A code made valid by changes, and how safely. */
export interface Corrected {
  readonly code: Uint8Array;
  /** The least number of check symbols left over in a block: 6, less 1 an erasure, less 2 a change. */
  readonly spare: number;
}

/**
 * The valid code nearest to this one that differs from it only in the erased places
 * and in at most `most` others, counted over both blocks.
 */
export function correctCode(
  code: Uint8Array,
  erased: readonly number[],
  most: number,
): Corrected | undefined {
  const word = masked(code);
  for (const place of erased) word[place] = 0;
  const count = blockCount(code.length);
  let left = most;
  let spare = checkSymbols;
  for (let block = 0; block < count; block += 1) {
    const part = count === 1 ? word : takeBlock(word, block, count);
    const holes = erased
      .filter((place) => place % count === block)
      .map((place) => (place - block) / count);
    const fixed = correct(part, holes, left);
    if (!fixed) return undefined;
    const changed = differences(part, fixed, holes);
    left -= changed;
    spare = Math.min(spare, checkSymbols - holes.length - 2 * changed);
    putBlock(word, fixed, block, count);
  }
  return { code: masked(word), spare };
}

function differences(a: Uint8Array, b: Uint8Array, except: readonly number[]): number {
  let count = 0;
  for (let i = 0; i < a.length; i += 1) if (a[i] !== b[i] && !except.includes(i)) count += 1;
  return count;
}

function takeBlock(word: Uint8Array, block: number, count: number): Uint8Array {
  const part = new Uint8Array(word.length / count);
  for (let i = 0; i < part.length; i += 1) part[i] = word[i * count + block] ?? 0;
  return part;
}

function putBlock(word: Uint8Array, part: Uint8Array, block: number, count: number): void {
  for (let i = 0; i < part.length; i += 1) word[i * count + block] = part[i] ?? 0;
}
