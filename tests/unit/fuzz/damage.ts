// How often damage beyond repair is taken for another code, held to what the mathematics gives.
import { protect, dataSymbols } from '../../../src/note/blocks.ts';
import { repair } from '../../../src/note/repair.ts';
import { soundMates } from '../../../src/note/sound.ts';
import { makeRandom, spoil, type Random } from '../note/random.ts';

/** A code's length without details: one block. */
const LENGTH = 16;
const CHECKS = 6;
const ORDER = 32;

/** Characters that sound like one, on average. */
const mates =
  Array.from({ length: ORDER }, (_, symbol) => soundMates(symbol).length).reduce((a, b) => a + b) /
  ORDER;
/** Words 3 changes from a given one, all three sound-alikes. */
const alike = ((LENGTH * (LENGTH - 1) * (LENGTH - 2)) / 6) * mates ** 3;
/** Words corrected to a given one: those within 2 changes, a Hamming ball, and 3 sound-alikes. */
const ball = 1 + LENGTH * (ORDER - 1) + ((LENGTH * (LENGTH - 1)) / 2) * (ORDER - 1) ** 2 + alike;

/** A way to damage a code, and how likely the result may be taken for another code, at most. */
export interface Damage {
  readonly name: string;
  readonly bound: number;
  readonly damage: (code: Uint8Array, random: Random) => Uint8Array;
}

export const damages: readonly Damage[] = [
  {
    name: 'up to 3 wrong characters',
    // Reed–Solomon codes are maximum distance separable (Singleton 1964): with 6 check symbols two
    // codes differ in 7 places. 3 changes and 3 corrections are 6.
    bound: 0,
    damage: (code, random) => spoil(code, random.places(1 + random.below(3), LENGTH), random),
  },
  {
    name: '4 wrong characters',
    // Only 3 corrections reach another code, all of them sound-alikes; the bound is that below.
    bound: alike / (ORDER - 1) ** CHECKS,
    damage: (code, random) => spoil(code, random.places(4, LENGTH), random),
  },
  {
    name: '5 or more wrong characters',
    // McEliece and Swanson, "On the decoder error probability for Reed–Solomon codes", IEEE
    // Transactions on Information Theory 32 (1986), from memory: for every number of wrong
    // characters at most the ball's volume over (q − 1)^checks.
    bound: ball / (ORDER - 1) ** CHECKS,
    damage: (code, random) => spoil(code, random.places(5 + random.below(12), LENGTH), random),
  },
  {
    name: 'characters drawn by chance',
    // Balls do not meet, each of 32^10 codes has one: their share of all 32^16 words, exactly.
    bound: ball / ORDER ** CHECKS,
    damage: (_, random) => random.symbols(LENGTH),
  },
  {
    name: 'a character short, drawn by chance',
    // 16 places to put one in, 32 ways each; a word so made is a code once in 32^6.
    bound: (LENGTH * ORDER) / ORDER ** CHECKS,
    damage: (_, random) => random.symbols(LENGTH - 1),
  },
  {
    name: 'a character too many, drawn by chance',
    bound: (LENGTH + 1) / ORDER ** CHECKS,
    damage: (_, random) => random.symbols(LENGTH + 1),
  },
];

export interface Taken {
  readonly name: string;
  readonly inputs: number;
  /** Times it was taken for a code other than the damaged one. */
  readonly taken: number;
  /** Most times the bound lets expect, chance allowed for: five standard deviations, and one. */
  readonly most: number;
}

/** Damages codes drawn by chance and counts how often another code comes out. */
export function countTaken({ name, bound, damage }: Damage, inputs: number, seed: number): Taken {
  const random = makeRandom(seed);
  let taken = 0;
  for (let run = 0; run < inputs; run += 1) {
    const code = protect(random.symbols(dataSymbols(LENGTH)), LENGTH);
    const found = repair(damage(code, random));
    if (found.ok && found.value.code.join() !== code.join()) taken += 1;
  }
  const mean = inputs * bound;
  // A Poisson count has its mean for variance.
  return { name, inputs, taken, most: mean === 0 ? 0 : Math.ceil(mean + 5 * Math.sqrt(mean) + 1) };
}
