import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { resistanceAt } from './rtd.ts';
import type { RtdProblem, Slope } from './rtd.ts';

/** From `low` to `high`, both included; an end that nobody knows is infinite. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

/** What a sensor would have to be off by, for an oven to miss its setting as it does. */
export interface SensorDrift {
  /** Ω read more than the curve gives at the oven's true temperature. */
  readonly ohms: Interval;
  /** Kelvins that the control believes the oven hotter than it is. */
  readonly kelvins: Interval;
}

export type MissProblem =
  RtdProblem | { readonly code: 'empty-interval'; readonly field: 'set' | 'miss' };

/** Both ends halved, summed, and so on: the mean of values known to lie in these; none of none. */
export function meanInterval(intervals: readonly Interval[]): Interval | undefined {
  const { length } = intervals;
  if (length === 0) return undefined;
  const mean = (end: keyof Interval) => intervals.reduce((sum, one) => sum + one[end], 0) / length;
  return { low: mean('low'), high: mean('high') };
}

/** R(S) − R(S + m); an unknown end of the miss leaves the drift's end unknown. */
function driftAt(set: number, miss: number, r0: number, slope?: Slope): Result<number, RtdProblem> {
  if (!Number.isFinite(miss)) return ok(-miss);
  const believed = resistanceAt(set, r0, slope);
  if (!believed.ok) return believed;
  const expected = resistanceAt(set + miss, r0, slope);
  return expected.ok ? ok(believed.value - expected.value) : expected;
}

/**
 * The drift a platinum sensor would have, if it alone makes an oven miss its setting.
 *
 * A control holds the oven where its sensor reads R(S), the resistance of the setting S
 * on its curve (`rtd.ts`). If the oven is truly at T then, the sensor reads
 * R(S) where the curve gives R(T): it is off by R(S) − R(T) ohms, and the control believes
 * S − T too much. A hot oven (T > S) has a sensor that reads low, a cool one high.
 *
 * `set` in °C, `miss` = T − S in kelvins, `r0` in Ω at 0 °C. The bounds are exact: for
 * T > S as for T < S the drift falls as the miss grows and moves one way with S (R is
 * increasing and concave), so its ends are taken at ends of the intervals.
 * Problems: an interval whose low end is above its high one, or temperatures off the curve.
 */
export function driftFromMiss(given: {
  readonly set: Interval;
  readonly miss: Interval;
  readonly r0: number;
  readonly slope?: Slope;
}): Result<SensorDrift, MissProblem> {
  const { set, miss, r0, slope } = given;
  for (const field of ['set', 'miss'] as const)
    // Written so that NaN fails, too.
    if (!(given[field].low <= given[field].high)) return fail({ code: 'empty-interval', field });
  const ends: { low: number[]; high: number[] } = { low: [], high: [] };
  for (const setting of [set.low, set.high])
    for (const [end, at] of [
      ['low', miss.high],
      ['high', miss.low],
    ] as const) {
      const drift = driftAt(setting, at, r0, slope);
      if (!drift.ok) return drift;
      ends[end].push(drift.value);
    }
  return ok({
    ohms: { low: Math.min(...ends.low), high: Math.max(...ends.high) },
    kelvins: { low: negative(miss.high), high: negative(miss.low) },
  });
}

/** −0 is no figure to show. */
function negative(value: number): number {
  return value === 0 ? 0 : -value;
}
