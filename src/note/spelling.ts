/**
 * Spelling words of the International Telecommunication Union (Radio Regulations,
 * appendix 14), read over the telephone in every language, and what Spanish and French speakers say
 * at home. What else is understood stands in `typed.ts`.
 */
import { alphabet } from './symbols.ts';
import type { NoteCode } from './types.ts';

/** Words by the letter they begin with. */
const byLetter = (words: string): Readonly<Record<string, string>> =>
  Object.fromEntries(words.split(' ').map((word) => [word.charAt(0), word]));

export const letterWords = byLetter(
  'Alfa Bravo Charlie Delta Echo Foxtrot Golf Hotel India Juliett Kilo Lima Mike November Oscar ' +
    'Papa Quebec Romeo Sierra Tango Uniform Victor Whiskey X-ray Yankee Zulu',
);

/**
 * What is said at home for letters whose ITU word is hard to say or to write there, by the page's
 * language, and the digits' names. Common practice, no source: the telephone alphabets of Spanish and
 * French vary by country and book.
 */
export const homeWords: Readonly<
  Record<string, { readonly letters: Readonly<Record<string, string>>; readonly digits: string }>
> = {
  es: {
    letters: byLetter(
      'Carmen Enrique Francia Historia José Madrid Navarra Querétaro Washington Xilófono Yegua Zaragoza',
    ),
    digits: 'cero uno dos tres cuatro cinco seis siete ocho nueve',
  },
  fr: {
    letters: byLetter('François Henri Joseph Marcel Nicolas Suzanne William Xavier Yvonne Zoé'),
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
