import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** A source of numbers in [0, 1), the same for the same seed everywhere. */
export type Random = () => number;

/** xoroshiro128+ from a 32-bit seed. */
export function seeded(seed: number): Random {
  const generator = xoroshiro128plus(seed);
  return () => uniformFloat64(generator);
}

/** An index drawn from a distribution that sums to 1. */
export function draw(distribution: readonly number[], random: Random): number {
  let left = random();
  const index = distribution.findIndex((one) => (left -= one) < 0);
  // Rounding can leave a last sliver above the sum.
  return index < 0 ? distribution.length - 1 : index;
}
