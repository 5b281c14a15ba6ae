/**
 * Spelling words of the International Telecommunication Union (Radio Regulations,
 * appendix 14), read over the telephone in every language. The digits' plain
 * English names are forgiven when reading; the letters' usual variants too, and what Spanish and
 * French speakers say at home.
 */
import { alphabet } from './symbols.ts';
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
 * What is said at home for letters whose ITU word is hard to say or to write there, by the page's
 * language, and the digits' names. Common practice, no source: the telephone alphabets of Spanish and
 * French vary by country and book.
 */
export const homeWords: Readonly<
  Record<string, { readonly letters: Readonly<Record<string, string>>; readonly digits: string }>
> = {
  es: {
    letters: {
      ...{ C: 'Carmen', E: 'Enrique', F: 'Francia', H: 'Historia', J: 'José', M: 'Madrid' },
      ...{
        N: 'Navarra',
        Q: 'Querétaro',
        W: 'Washington',
        X: 'Xilófono',
        Y: 'Yegua',
        Z: 'Zaragoza',
      },
    },
    digits: 'cero uno dos tres cuatro cinco seis siete ocho nueve',
  },
  fr: {
    letters: {
      ...{ F: 'François', H: 'Henri', J: 'Joseph', M: 'Marcel', N: 'Nicolas', S: 'Suzanne' },
      ...{ W: 'William', X: 'Xavier', Y: 'Yvonne', Z: 'Zoé' },
    },
    digits: 'zéro un deux trois quatre cinq six sept huit neuf',
  },
};

/** What may stand beside each ITU word, group by group: '' where that serves; none in other languages. */
export function spellAtHome(code: NoteCode, language: string): string[][] | undefined {
  const { letters } = homeWords[language.slice(0, 2)] ?? {};
  if (!letters) return undefined;
  return code.split('-').map((group) => [...group].map((sign) => letters[sign] ?? ''));
}

/**
 * What to say for each character, group by group: the ITU word of a letter; a digit by its name
 * in the speaker's language, as itself where no names are given.
 */
export function spell(code: NoteCode, digits: readonly string[] = []): string[][] {
  const word = (sign: string) => letterWords[sign] ?? digits[Number(sign)] ?? sign;
  return code.split('-').map((group) => [...group].map(word));
}

/** Digits in a group of the second reading (`digits.ts`). */
export const digitGroup = 5;

/** A code's digits in groups of five, the last group what is left. */
export function digitGroups(code: NoteCode): readonly string[] {
  return digitsOf(code).match(new RegExp(`.{1,${String(digitGroup)}}`, 'g')) ?? [];
}

/** A code's digits in one row. */
export const digitsOf = (code: string): string =>
  digitText(Uint8Array.from(code.replaceAll('-', ''), (character) => alphabet.indexOf(character)));

/** Symbol values as digits, two each. */
export const digitText = (symbols: Uint8Array): string =>
  Array.from(symbols, (symbol) => String(symbol).padStart(2, '0')).join('');
