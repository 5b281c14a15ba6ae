import { minutesFor, together } from '../diagnosis/minutes.ts';
import { inOneGo, sum } from '../diagnosis/numbers.ts';
import { CAUTIOUS, type Assessed } from '../visit/assess.ts';

/** The day's minutes of finding faults; repairs and driving are not in them. */
export interface Total {
  readonly expected: number;
  /** Minutes enough for all visits together with chance `CAUTIOUS`; less than the visits' own added up. */
  readonly cautious: number;
}

/** The minutes of a route, worked out in pieces. */
export function* totalInPieces(visits: readonly Assessed[]): Generator<undefined, Total> {
  const all = yield* together(visits.map(({ minutes }) => minutes));
  return {
    expected: sum(visits.map(({ expected }) => expected)),
    cautious: minutesFor(all, CAUTIOUS),
  };
}

/** The same in one go. */
export const totalOf = (visits: readonly Assessed[]): Total => inOneGo(totalInPieces(visits));
