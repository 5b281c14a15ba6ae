/**
 * Crockford's base 32: the alphabet, numbers as symbols (most significant first),
 * and the grouped text. https://www.crockford.com/base32.html
 */
export const alphabet = '0123456789ABCDEFGHJKMNPQRSTVWXYZ';

/** Stands for an unreadable character among symbol values 0 to 31. */
export const unreadable = 32;

/** Characters in a group. */
export const groupSize = 4;

/** Ten symbols are 50 bits: the most a double holds exactly, in whole symbols. */
const limb = 10;

/** A number below 32^count as `count` symbol values. */
export function numberToSymbols(number: bigint, count: number): Uint8Array {
  const symbols = new Uint8Array(count);
  let left = number;
  for (let i = count - 1; i >= 0; i -= 1) {
    symbols[i] = Number(left & 31n);
    left >>= 5n;
  }
  return symbols;
}

/** The number the first `count` symbol values spell. */
export function symbolsToNumber(symbols: Uint8Array, count: number): bigint {
  let number = 0n;
  for (let start = 0; start < count; start += limb) {
    const end = Math.min(start + limb, count);
    let part = 0;
    for (let i = start; i < end; i += 1) part = part * 32 + (symbols[i] ?? 0);
    number = start === 0 ? BigInt(part) : (number << BigInt(5 * (end - start))) + BigInt(part);
  }
  return number;
}

/** The character of a symbol value, '?' for an unreadable one. */
export function characterOf(symbol: number): string {
  return symbol === unreadable ? '?' : alphabet.charAt(symbol);
}

/** Symbol values as text in groups joined by hyphens. */
export function groupedText(symbols: Uint8Array): string {
  let text = '';
  for (let i = 0; i < symbols.length; i += 1) {
    if (i > 0 && i % groupSize === 0) text += '-';
    text += characterOf(symbols[i] ?? unreadable);
  }
  return text;
}
