/**
 * Reed–Solomon codes over GF(32) with six check symbols and roots α¹ to α⁶,
 * systematic, up to 31 symbols long. Two different codewords of one length differ
 * in at least seven places (Singleton bound, met), so a word with e known bad places
 * and w unknown ones has one nearest codeword while 2w + e ≤ 6.
 *
 * Symbol i of n is the coefficient of x^(n-1-i); its locator is α^(n-1-i).
 */
import { divide, log, multiply, order, power } from './gf32.ts';

export const checkSymbols = 6;

/** (x + α)(x + α²)…(x + α⁶), highest power first; the leading 1 left out. */
const generator = new Uint8Array(checkSymbols);
for (let root = 1, g = [1]; root <= checkSymbols; root += 1) {
  g = [...g, 0].map((c, i) => c ^ multiply(g[i - 1] ?? 0, power(root)));
  generator.set(g.slice(1));
}

/** `step[32 j + s]` = s α^(j+1): one Horner step of syndrome j. */
const step = new Uint8Array(32 * checkSymbols);
for (let j = 0; j < checkSymbols; j += 1) {
  for (let s = 0; s < 32; s += 1) step[32 * j + s] = multiply(s, power(j + 1));
}

/** Fill the last six symbols of a word so that it becomes a codeword. */
export function addChecks(word: Uint8Array): void {
  const data = word.length - checkSymbols;
  const remainder = new Uint8Array(checkSymbols);
  for (let i = 0; i < data; i += 1) {
    const lead = (word[i] ?? 0) ^ (remainder[0] ?? 0);
    for (let j = 0; j < checkSymbols; j += 1) {
      remainder[j] = (remainder[j + 1] ?? 0) ^ multiply(lead, generator[j] ?? 0);
    }
  }
  word.set(remainder, data);
}

/** The word's values at α¹ to α⁶: all zero exactly for a codeword. */
export function syndromes(word: Uint8Array): Uint8Array {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  let e = 0;
  let f = 0;
  for (const s of word) {
    a = s ^ (step[a] ?? 0);
    b = s ^ (step[32 + b] ?? 0);
    c = s ^ (step[64 + c] ?? 0);
    d = s ^ (step[96 + d] ?? 0);
    e = s ^ (step[128 + e] ?? 0);
    f = s ^ (step[160 + f] ?? 0);
  }
  return Uint8Array.of(a, b, c, d, e, f);
}

/** Whether syndromes, or what is left of them, are all zero. */
export function allZero(values: Uint8Array): boolean {
  return values.every((value) => value === 0);
}

/**
 * Make a codeword of a word by changing only the erased places and at most `most`
 * others. Erased places must hold 0.
 * @param erased places known to be bad, at most 6 - 2 `most` of them
 * @param most unknown bad places looked for: 0, 1 or 2
 * @returns the codeword, undefined where there is none; never two are possible
 */
export function correct(
  word: Uint8Array,
  erased: readonly number[],
  most: number,
): Uint8Array | undefined {
  const found = syndromes(word);
  const locators = erased.map((place) => power(word.length - 1 - place));
  const wrong = wrongLocators(withoutErased(found, locators), most);
  if (!wrong) return undefined;
  const fixed = word.slice();
  const all = [...locators, ...wrong];
  for (const [i, value] of magnitudes(found, all).entries()) {
    const place = word.length - 1 - log(all[i] ?? 1);
    // Outside a shortened code, or an erased place again: no pattern the caller allows.
    if (place < 0 || (i >= erased.length && erased.includes(place))) return undefined;
    fixed[place] = (fixed[place] ?? 0) ^ value;
  }
  return allZero(syndromes(fixed)) ? fixed : undefined;
}

/**
 * Forney's modified syndromes: T_j = S_{j+1} + X S_j for each erased locator X in
 * turn, one syndrome fewer each time, no longer depend on the erased symbols.
 */
function withoutErased(found: Uint8Array, locators: readonly number[]): Uint8Array {
  let left = found;
  for (const x of locators) {
    const next = new Uint8Array(left.length - 1);
    for (let j = 0; j < next.length; j += 1) {
      next[j] = (left[j + 1] ?? 0) ^ multiply(x, left[j] ?? 0);
    }
    left = next;
  }
  return left;
}

/** Locators of the unknown bad places, none for a codeword, undefined where over `most`. */
function wrongLocators(t: Uint8Array, most: number): number[] | undefined {
  if (allZero(t)) return [];
  if (most >= 1) {
    const one = geometricRatio(t);
    if (one !== 0) return [one];
  }
  return most >= 2 ? twoLocators(t) : undefined;
}

/** X with t_{j+1} = X t_j throughout, as one wrong symbol leaves; 0 where there is none. */
function geometricRatio(t: Uint8Array): number {
  const first = t[0] ?? 0;
  if (first === 0) return 0;
  const ratio = divide(t[1] ?? 0, first);
  for (let j = 1; j < t.length; j += 1) if (t[j] !== multiply(ratio, t[j - 1] ?? 0)) return 0;
  return ratio;
}

/**
 * Peterson's algorithm for two: the syndromes obey S_{j+2} = a S_{j+1} + b S_j with
 * a = X + Y, b = XY. The first two equations give a and b, the others must agree.
 */
function twoLocators(t: Uint8Array): number[] | undefined {
  const at = (j: number): number => t[j] ?? 0;
  const determinant = multiply(at(1), at(1)) ^ multiply(at(0), at(2));
  if (determinant === 0) return undefined;
  const a = divide(multiply(at(1), at(2)) ^ multiply(at(0), at(3)), determinant);
  const b = divide(multiply(at(2), at(2)) ^ multiply(at(1), at(3)), determinant);
  for (let j = 0; j + 2 < t.length; j += 1) {
    if (at(j + 2) !== (multiply(a, at(j + 1)) ^ multiply(b, at(j)))) return undefined;
  }
  for (let i = 0; i < order; i += 1) {
    const x = power(i);
    const y = a ^ x;
    if (multiply(x, y) === b) return x === y || y === 0 ? undefined : [x, y];
  }
  return undefined;
}

/** Forney's formula: the value at X is Ω(1/X) / Λ'(1/X), Ω = S Λ mod x⁶, Λ = Π (1 + X x). */
function magnitudes(found: Uint8Array, locators: readonly number[]): number[] {
  let product = Array.from(found);
  for (const x of locators) product = product.map((c, j) => c ^ multiply(x, product[j - 1] ?? 0));
  return locators.map((x) => {
    const inverse = divide(1, x);
    // Ω has a degree below the number of locators; the rest of the product is zero for a codeword.
    const top = product.reduceRight((sum, c) => multiply(sum, inverse) ^ c, 0);
    let slope = 1;
    for (const y of locators) if (y !== x) slope = multiply(slope, 1 ^ multiply(y, inverse));
    return slope === 0 ? 0 : divide(top, multiply(x, slope));
  });
}
