/**
 * From what somebody typed, pasted or said to symbol values. Everything forgiven
 * stands in `forgiven` and in the words here and in `spelling.ts`; all else is refused by name.
 */
import { fail, ok, type Result } from '../result.ts';
import { homeWords, letterWords } from './spelling.ts';
import { alphabet, unreadable } from './symbols.ts';
import type { ReadProblem } from './types.ts';

const separator = -1;

/** Characters beyond the alphabet that are read, and as what. Small letters go with their capitals. */
const forgiven: readonly (readonly [characters: string, means: number])[] = [
  ['O', 0],
  ['IL', 1],
  ['?_\uff1f\uff3f', unreadable],
  [
    ' \t\n\v\f\r\u00a0\u1680\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009',
    separator,
  ],
  // Marks of direction that come along out of a right-to-left message; overrides are refused.
  ['\u061c\u200e\u200f\u2066\u2067\u2068\u2069', separator],
  ['\u200a\u200b\u2028\u2029\u202f\u205f\u2060\u3000\ufeff', separator],
  // Hyphens, dashes and minus signs.
  ['-\u00ad\u2010\u2011\u2012\u2013\u2014\u2015\u2212\ufe58\ufe63\uff0d', separator],
];

const meanings = new Map<string, number>();
for (const [characters, means] of [...forgiven, ...[...alphabet].map((c, i) => [c, i] as const)]) {
  for (const character of characters) {
    meanings.set(character, means);
    meanings.set(character.toLowerCase(), means);
  }
}

/** Without its accents: who types what was said leaves them out. */
const bare = (word: string): string => word.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** The ITU's code words for digits, by the digit. */
export const digitWords =
  'Nadazero Unaone Bissotwo Terrathree Kartefour Pantafive Soxisix Setteseven Oktoeight Novenine'.split(
    ' ',
  );

/** The digits' English names, by the digit. */
export const digitNames = 'zero one two three four five six seven eight nine'.split(' ');

/** Other spellings of letter words in wide use. */
const variants: Readonly<Record<string, string>> = {
  alpha: 'A',
  juliet: 'J',
  xray: 'X',
  whisky: 'W',
};

const home = Object.values(homeWords).flatMap(({ letters, digits }) => [
  ...Object.entries(letters).map(([letter, word]) => [bare(word), letter] as const),
  ...digits.split(' ').map((word, digit) => [bare(word), String(digit)] as const),
]);

/** Small spelling word → the character it stands for. */
const words = new Map<string, string>([
  ...home,
  ...Object.entries(letterWords).map(([letter, word]) => [word.toLowerCase(), letter] as const),
  ...Object.entries(variants),
  ...[digitWords, digitNames].flatMap((list) =>
    list.map((word, digit) => [word.toLowerCase(), String(digit)] as const),
  ),
]);

/** Every character for itself. */
export function plainSymbols(input: string): Result<Uint8Array, ReadProblem> {
  const symbols: number[] = [];
  let at = 0;
  for (const character of input) {
    const means = meanings.get(character);
    if (means === undefined)
      return fail({ code: 'bad-symbol', at, nth: symbols.length, character });
    if (means !== separator) symbols.push(means);
    at += character.length;
  }
  return ok(Uint8Array.from(symbols));
}

interface Token {
  readonly at: number;
  readonly text: string;
}

/**
 * Spelling words each for one character. Only a text of which more than half the
 * tokens are words or single characters is taken for spelled: a group of a plain code
 * can look like a word (PAPA, K110). Undefined for any other text.
 */
export function spelledSymbols(input: string): Result<Uint8Array, ReadProblem> | undefined {
  const tokens = joinXray(tokensOf(input));
  const spelled = tokens.filter(({ text }) => words.has(bare(text)));
  const single = tokens.filter(({ text }) => text.length === 1);
  if (spelled.length === 0 || 2 * (spelled.length + single.length) <= tokens.length)
    return undefined;
  const symbols: number[] = [];
  for (const { at, text } of tokens) {
    const word = words.get(bare(text));
    if (word === undefined && text.length > 1 && /^\p{L}+$/u.test(text)) {
      return fail({ code: 'bad-word', at, nth: symbols.length, word: text });
    }
    const read = plainSymbols(word ?? text);
    if (!read.ok) {
      const { error } = read;
      if (error.code !== 'bad-symbol') return read;
      return fail({ ...error, at: word ? at : at + error.at, nth: symbols.length + error.nth });
    }
    symbols.push(...read.value);
  }
  return ok(Uint8Array.from(symbols));
}

/** Runs between separators, in small letters. */
export function tokensOf(input: string): Token[] {
  const tokens: Token[] = [];
  let from = 0;
  for (let at = 0; at <= input.length; at += 1) {
    if (at < input.length && meanings.get(input.charAt(at)) !== separator) continue;
    if (at > from) tokens.push({ at: from, text: input.slice(from, at).toLowerCase() });
    from = at + 1;
  }
  return tokens;
}

/** The one spelling word with a hyphen, and so often with a space. */
function joinXray(tokens: readonly Token[]): Token[] {
  return tokens.flatMap((token, i) => {
    if (token.text === 'ray' && tokens[i - 1]?.text === 'x') return [];
    return token.text === 'x' && tokens[i + 1]?.text === 'ray'
      ? [{ ...token, text: 'x-ray' }]
      : [token];
  });
}
