/**
 * Syllables of Spanish and French words, by the rules of their spelling. Both languages
 * write their vowels so regularly that rules do; English needs a library for it.
 */

/** Takes a stray `u` away that is written but not said: "que", "guitarra", "quatre". */
const silentU = (word: string): string =>
  word.replace(/qu(?=[aeiouáéíóúàâéèêëîïôû])/g, 'q').replace(/gu(?=[eiéíèêî])/g, 'g');

/**
 * Syllables of a Spanish word: its strong vowels (a, e, o, and any vowel with an accent),
 * and one for each group of weak vowels (i, u) that has no strong one beside it. So
 * "ciu-dad", "pa-ís", "mur-cié-la-go", "a-é-re-o" (Real Academia Española, Ortografía de
 * la lengua española, 2010: diphthongs, triphthongs and hiatus). An h between vowels
 * parts nothing ("prohi-bir"); a y is a vowel unless one follows.
 */
export function spanishSyllables(word: string): number {
  const plain = silentU(word.toLowerCase().normalize('NFC')).replace(/h/g, '');
  const groups = plain.replace(/y(?![aeiouáéíóú])/g, 'i').match(/[aeiouáéíóúü]+/g) ?? [];
  const nuclei = groups.map((group) => group.match(/[aeoáéíóú]/g)?.length ?? 1);
  return Math.max(
    1,
    nuclei.reduce((sum, count) => sum + count, 0),
  );
}

/**
 * Syllables of a French word as it is said: its groups of vowels, without a last mute e
 * ("por-te" is said as one); a vowel with a diaeresis and one after é begins a new
 * syllable ("na-ïf", "thé-â-tre"). Endings "-ent" are counted though verbs do not say
 * them, so that a text is called harder, never easier, than it is.
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
