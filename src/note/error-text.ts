/**
 * The display's text as a number: bijective numeration, in which every text has
 * exactly one number and every positive number one text. Capitals and digits, which
 * is what seven-segment displays show, cost 5.2 bits a character; a text with
 * anything else costs 6.6.
 */
const digits = '0123456789';
const capitals = 'ABCDEFGHIJKLMNOPQRSTUVWXYZ';
/** Printable ASCII (0x20 to 0x7e) and the degree sign. */
const printable = Array.from({ length: 95 }, (_, i) => String.fromCharCode(0x20 + i)).join('');

/** The alphabets, the narrowest first. Their order, and the order in each, is part of the code. */
export const alphabets = [` -${digits}${capitals}`, `${printable}°`] as const;

/** Most characters a code carries. */
export const longestError = 24;

/** Which alphabet a text is written in: the first that has all its characters, or -1. */
export function alphabetOf(text: string): number {
  return alphabets.findIndex((alphabet) =>
    [...text].every((character) => alphabet.includes(character)),
  );
}

/** The characters of a text that no alphabet has, each once. */
export function unencodable(text: string): string[] {
  const widest = alphabets[1];
  return [...new Set(text)].filter((character) => !widest.includes(character));
}

/** Number of a non-empty text in an alphabet that has all its characters; 1 or more. */
export function textToNumber(text: string, alphabet: string): bigint {
  const radix = BigInt(alphabet.length);
  let number = 0n;
  for (const character of text) number = number * radix + BigInt(alphabet.indexOf(character) + 1);
  return number;
}

/** The text of a number, undefined where it would pass `longestError`. */
export function numberToText(number: bigint, alphabet: string): string | undefined {
  const radix = BigInt(alphabet.length);
  let text = '';
  for (let left = number; left > 0n; left = (left - 1n) / radix) {
    if (text.length === longestError) return undefined;
    text = alphabet.charAt(Number((left - 1n) % radix)) + text;
  }
  return text;
}

/**
 * The nearest tidy form of what somebody typed: typographic dashes and quotes as
 * ASCII, look-alike forms folded (NFKC), invisible format characters (text direction
 * and the like) dropped, control characters as spaces, single spaces, none at the ends.
 */
export function tidyErrorText(typed: string): string {
  return typed
    .replace(/[º˚]/gu, '°')
    .normalize('NFKC')
    .replace(/\p{Pd}|\u2212/gu, '-')
    .replace(/[‘’′]/gu, "'")
    .replace(/[“”″]/gu, '"')
    .replace(/[\p{Cf}\p{M}]/gu, '')
    .replace(/[\p{Cc}\s]+/gu, ' ')
    .trim();
}

/** A text the code takes as it is: no space at an end, none doubled. */
export function isTidy(text: string): boolean {
  return !/^ | {2}| $/.test(text);
}
