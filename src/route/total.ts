import { minutesFor, together } from '../diagnosis/minutes.ts';
import { sum } from '../diagnosis/numbers.ts';
import { CAUTIOUS, type Assessed } from '../visit/assess.ts';

/** The day's minutes of finding faults; repairs and driving are not in them. */
export interface Total {
  readonly expected: number;
  /** Minutes enough for all visits together with chance `CAUTIOUS`; less than the visits' own added up. */
  readonly cautious: number;
}

/** The minutes of a route. */
export function totalOf(visits: readonly Assessed[]): Total {
  return {
    expected: sum(visits.map(({ expected }) => expected)),
    cautious: minutesFor(together(visits.map(({ minutes }) => minutes)), CAUTIOUS),
  };
}
