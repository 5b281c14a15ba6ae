import { sum } from './numbers.ts';

/** What was claimed of one visit's likeliest fault, and whether it was that. */
export interface Claim {
  /** Its share, in [0, 1]. */
  readonly claimed: number;
  readonly right: boolean;
}

/** The visits whose claim lies in [from, to). */
export interface ReliabilityBand {
  readonly from: number;
  readonly to: number;
  readonly visits: number;
  /** Mean claim. */
  readonly claimed: number;
  /** How many were right. */
  readonly right: number;
  /** 95 % interval of the share that is right. */
  readonly interval: Interval;
}

export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** Two-sided 95 % of the normal distribution. */
const Z = 1.96;

/** Wilson's score interval for `hits` of `n` (E. B. Wilson 1927): never outside [0, 1], n above 0. */
export function wilson(hits: number, n: number): Interval {
  const p = hits / n;
  const middle = (p + Z ** 2 / (2 * n)) / (1 + Z ** 2 / n);
  const half = (Z * Math.sqrt((p * (1 - p)) / n + Z ** 2 / (4 * n ** 2))) / (1 + Z ** 2 / n);
  return { low: middle - half, high: middle + half };
}

/** Bands of equal width. */
const BANDS = 10;

/** How often claims of each height were right; bands without a visit are left out. */
export function reliability(claims: readonly Claim[]): ReliabilityBand[] {
  return Array.from({ length: BANDS }, (_, band) => {
    // A claim of 1 belongs to the last one.
    const own = claims.filter(
      ({ claimed }) => Math.min(BANDS - 1, Math.floor(claimed * BANDS)) === band,
    );
    const right = own.filter((one) => one.right).length;
    return {
      ...{ from: band / BANDS, to: (band + 1) / BANDS, visits: own.length, right },
      claimed: sum(own.map(({ claimed }) => claimed)) / own.length,
      interval: wilson(right, own.length),
    };
  }).filter(({ visits }) => visits > 0);
}
