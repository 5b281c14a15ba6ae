/** From the owner's readings of an oven thermometer to the drift of the sensor they would imply. */
import { parseId } from '../guide/ids.ts';
import type { Step } from '../journey/trace.ts';
import { driftFromMiss, meanInterval } from '../physics/oven-miss.ts';
import type { Interval, SensorDrift } from '../physics/oven-miss.ts';
import type { Slope } from '../physics/rtd.ts';
import { differenceInKelvins, toCelsius } from '../physics/temperature.ts';
import type { Band, StaffViews } from './staff-view.ts';

/** What the readings come to. Miss in kelvins, the oven against its setting. */
export interface Drift extends SensorDrift {
  /** Readings that were given. */
  readonly count: number;
  readonly miss: Interval;
  readonly r0: number;
}

/** The commonest sensor of ranges, Ω at 0 °C (common practice, no source). */
const R0 = 1000;
/** Both come with this R0, and nobody has looked at the sensor yet: what is told covers both. */
const SLOPES: readonly Slope[] = [3851, 3750];

function interval([low, high]: Band, inUnit: (fahrenheit: number) => number): Interval {
  return {
    low: low === null ? -Infinity : inUnit(low),
    high: high === null ? Infinity : inUnit(high),
  };
}

/** The drift a journey's readings imply; undefined where it has no setting or no readings. */
export function driftOf(staffViews: StaffViews, steps: readonly Step[]): Drift | undefined {
  const found = steps.map(({ node, edge }) => {
    const miss = staffViews[node.guide]?.miss;
    const name = `${parseId(node.sentences).name}.${edge.id}`;
    return { set: miss?.set[name], reading: miss?.readings[name] };
  });
  const set = found.find((one) => one.set)?.set;
  const readings = found.flatMap(({ reading }) => (reading ? [reading] : []));
  const miss = meanInterval(readings.map((band) => interval(band, differenceInKelvins)));
  if (!set || !miss) return undefined;
  const drifts = SLOPES.flatMap((slope) => {
    const drift = driftFromMiss({ set: interval(set, toCelsius), miss, r0: R0, slope });
    return drift.ok ? [drift.value] : [];
  });
  const [first] = drifts;
  // Off the curve: content is at fault, and the note is worth reading without.
  if (!first) return undefined;
  const ohms = {
    low: Math.min(...drifts.map((drift) => drift.ohms.low)),
    high: Math.max(...drifts.map((drift) => drift.ohms.high)),
  };
  return { ...first, ohms, count: readings.length, miss, r0: R0 };
}
