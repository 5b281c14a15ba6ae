/**
 * Characters that sound alike when they are read aloud, bare, in English.
 *
 * The letters: the confusion classes that the trade press of speech recognition gives for the
 * telephone (“The Alpha Bail”, Speech Technology), of which the longest is the E-set of Fanty and
 * Cole (1990). I is read as 1 here, so that its mate Y is 1's. The digits among the letters, 5 and
 * 9 (hence the radio's “niner”) and 2 and Q are from memory, no source.
 */
import { alphabet } from './symbols.ts';

const classes = ['AHJK8', 'BCDEGPTVZ3', 'FSX6', 'MN', 'Y1', '59', '2Q'];

const mates: readonly (readonly number[])[] = [...alphabet].map((character) =>
  classes
    .filter((all) => all.includes(character))
    .flatMap((all) => [...all].filter((one) => one !== character))
    .map((one) => alphabet.indexOf(one)),
);

/** The symbol values that sound like this one, itself not among them. */
export function soundMates(symbol: number): readonly number[] {
  return mates[symbol] ?? [];
}

export function soundAlike(a: number, b: number): boolean {
  return soundMates(a).includes(b);
}
