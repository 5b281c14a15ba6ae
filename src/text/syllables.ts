/** Syllables by rules of spelling; English needs a library. */

/** Takes a stray `u` away that is written but not said: "que", "guitarra", "quatre". */
const silentU = (word: string): string =>
  word.replace(/qu(?=[aeiouáéíóúàâéèêëîïôû])/g, 'q').replace(/gu(?=[eiéíèêî])/g, 'g');

/**
 * Syllables of a Spanish word: strong vowels (a, e, o, any accented), and one for each group of weak
 * ones (i, u) alone: "ciu-dad", "pa-ís" (Real Academia Española, Ortografía, 2010). An h between
 * vowels parts nothing ("prohi-bir"); a y is a vowel unless one follows.
 */
export function spanishSyllables(word: string): number {
  const plain = silentU(word.toLowerCase().normalize('NFC')).replace(/h/g, '');
  const groups = plain.replace(/y(?![aeiouáéíóú])/g, 'i').match(/[aeiouáéíóúü]+/g) ?? [];
  const nuclei = groups.map((group) => group.match(/[aeoáéíóú]/g)?.length ?? 1);
  const said = nuclei.reduce((sum, count) => sum + count, 0);
  return Math.max(1, said);
}

/**
 * Syllables of a French word as it is said: groups of vowels, without a last mute e; a diaeresis, and
 * a vowel after é, begin a new one ("na-ïf"). "-ent" is counted: texts seem harder, never easier.
 */
export function frenchSyllables(word: string): number {
  // A last e after é or i is mute too: "fumée", "partie".
  const plain = silentU(word.toLowerCase().normalize('NFC')).replace(/(?<=[éèêi])es?$/, '');
  const groups = plain.match(/[aeiouyàâäéèêëîïôöùûüœæ]+/g) ?? [];
  // A last e or es is mute, unless it is the word's only vowel ("le", "les") or has an accent.
  const mute = groups.length > 1 && /[^aeiouyàâäéèêëîïôöùûüœæ]es?$/.test(plain) ? 1 : 0;
  const parted = groups.map(
    (group) => 1 + (group.match(/(?<=.)[ïëü]|(?<=é)[aeiouâôèê]/g)?.length ?? 0),
  );
  return Math.max(1, parted.reduce((sum, count) => sum + count, 0) - mute);
}
