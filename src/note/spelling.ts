/**
 * Spelling words of the International Telecommunication Union (Radio Regulations,
 * appendix 14), read over the telephone in every language. The digits' plain
 * English names are forgiven when reading; the letters' usual variants too.
 */
import type { NoteCode } from './types.ts';

export const letterWords: Readonly<Record<string, string>> = {
  A: 'Alfa',
  B: 'Bravo',
  C: 'Charlie',
  D: 'Delta',
  E: 'Echo',
  F: 'Foxtrot',
  G: 'Golf',
  H: 'Hotel',
  I: 'India',
  J: 'Juliett',
  K: 'Kilo',
  L: 'Lima',
  M: 'Mike',
  N: 'November',
  O: 'Oscar',
  P: 'Papa',
  Q: 'Quebec',
  R: 'Romeo',
  S: 'Sierra',
  T: 'Tango',
  U: 'Uniform',
  V: 'Victor',
  W: 'Whiskey',
  X: 'X-ray',
  Y: 'Yankee',
  Z: 'Zulu',
};

/** The ITU's code words for digits, by the digit. */
export const digitWords = [
  'Nadazero',
  'Unaone',
  'Bissotwo',
  'Terrathree',
  'Kartefour',
  'Pantafive',
  'Soxisix',
  'Setteseven',
  'Oktoeight',
  'Novenine',
] as const;

/** The digits' English names, by the digit. */
export const digitNames = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
] as const;

/** Other spellings of letter words in wide use. */
export const variants: Readonly<Record<string, string>> = {
  alpha: 'A',
  juliet: 'J',
  xray: 'X',
  whisky: 'W',
};

/**
 * What to say for each character, group by group: the ITU word of a letter; a digit by its name
 * in the speaker's language, as itself where no names are given.
 */
export function spell(code: NoteCode, digits: readonly string[] = []): string[][] {
  const word = (sign: string) => letterWords[sign] ?? digits[Number(sign)] ?? sign;
  return code.split('-').map((group) => [...group].map(word));
}
