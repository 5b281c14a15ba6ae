import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

export interface Random {
  /** A whole number from 0 to `count` - 1. */
  readonly below: (count: number) => number;
  /** `count` different places of a code of this length, in no order. */
  readonly places: (count: number, length: number) => number[];
  readonly pick: <T>(list: readonly T[]) => T;
  /** `count` random symbol values. */
  readonly symbols: (count: number) => Uint8Array;
}

/** Seeded, so that a failure can be run again: name the seed in the failure message. */
export function makeRandom(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  const below = (count: number): number => uniformInt(generator, 0, count - 1);
  return {
    below,
    places: (count, length) => {
      const places: number[] = [];
      while (places.length < count) {
        const place = below(length);
        if (!places.includes(place)) places.push(place);
      }
      return places;
    },
    pick: (list) => {
      const item = list[below(list.length)];
      if (item === undefined) throw new Error('nothing to pick from');
      return item;
    },
    symbols: (count) => Uint8Array.from({ length: count }, () => below(32)),
  };
}

/** A copy with the symbol at each place changed to another one. */
export function spoil(code: Uint8Array, places: readonly number[], random: Random): Uint8Array {
  const spoiled = code.slice();
  for (const place of places) {
    spoiled[place] = ((spoiled[place] ?? 0) + 1 + random.below(31)) % 32;
  }
  return spoiled;
}
