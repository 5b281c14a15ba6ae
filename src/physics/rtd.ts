import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';

/**
 * Platinum resistance thermometers, IEC 60751:
 * R(t) = R0·(1 + At + Bt² + C(t − 100)t³), the last term only below 0 °C.
 * The curve holds for platinum only: nickel-wire and NTC sensors follow others.
 */
const A = 3.9083e-3;
const B = -5.775e-7;
const C = -4.183e-12;

/** The range of the standard's table, °C. */
export const rtdRange = { min: -200, max: 850 } as const;

export type RtdProblem =
  | { readonly code: 'not-a-finite-number'; readonly field: 'celsius' | 'ohms' | 'r0' }
  | { readonly code: 'r0-not-positive'; readonly r0: number }
  | {
      readonly code: 'outside-the-curve';
      readonly field: 'celsius' | 'ohms';
      readonly value: number;
      readonly min: number;
      readonly max: number;
    };

/** R(t)/R0, unchecked. */
function ratio(t: number): number {
  const below = t < 0 ? C * (t - 100) * t ** 3 : 0;
  return 1 + A * t + B * t * t + below;
}

/** d(R/R0)/dt per °C, unchecked: positive over the whole range. */
function slope(t: number): number {
  const below = t < 0 ? C * (4 * t - 300) * t * t : 0;
  return A + 2 * B * t + below;
}

const MIN_RATIO = ratio(rtdRange.min);
const MAX_RATIO = ratio(rtdRange.max);
/** Half the last digit of the standard's table (0.001 Ω of 100): its ends can be read back. */
const ROUNDING = 5e-6;

function checkR0(r0: number): RtdProblem | undefined {
  if (!Number.isFinite(r0)) return { code: 'not-a-finite-number', field: 'r0' };
  return r0 > 0 ? undefined : { code: 'r0-not-positive', r0 };
}

function checkCelsius(celsius: number): RtdProblem | undefined {
  if (!Number.isFinite(celsius)) return { code: 'not-a-finite-number', field: 'celsius' };
  const { min, max } = rtdRange;
  return celsius >= min && celsius <= max
    ? undefined
    : { code: 'outside-the-curve', field: 'celsius', value: celsius, min, max };
}

/** Ω at a temperature in °C, for a sensor of `r0` Ω at 0 °C (100, 1000, …). */
export function resistanceAt(celsius: number, r0: number): Result<number, RtdProblem> {
  const bad = checkR0(r0) ?? checkCelsius(celsius);
  return bad ? fail(bad) : ok(r0 * ratio(celsius));
}

/**
 * °C at a resistance in Ω. From R0 upward the quadratic is solved exactly, in the
 * form without cancellation near 0 °C; below, Newton's iteration starts from that
 * root, at most 2.5 °C off at −200 °C, and settles to rounding within four rounds.
 */
export function temperatureAt(ohms: number, r0: number): Result<number, RtdProblem> {
  const bad = checkR0(r0);
  if (bad) return fail(bad);
  if (!Number.isFinite(ohms)) return fail({ code: 'not-a-finite-number', field: 'ohms' });
  const w = ohms / r0;
  if (w < MIN_RATIO - ROUNDING || w > MAX_RATIO + ROUNDING) {
    const [min, max] = [r0 * MIN_RATIO, r0 * MAX_RATIO];
    return fail({ code: 'outside-the-curve', field: 'ohms', value: ohms, min, max });
  }
  const excess = w - 1;
  let t = (2 * excess) / (A + Math.sqrt(A * A + 4 * B * excess));
  if (t < 0) for (let round = 0; round < 4; round++) t -= (ratio(t) - w) / slope(t);
  return ok(Math.min(rtdRange.max, Math.max(rtdRange.min, t)));
}

export type ToleranceClass = 'A' | 'B';

/**
 * The standard's tolerance in ± °C: class A 0.15 + 0.002|t|, class B 0.30 + 0.005|t|.
 * The standard grants each class over a part of the range only, depending on how
 * the sensor is built; the formula is given for any temperature.
 */
export function toleranceAt(celsius: number, cls: ToleranceClass): number {
  const t = Math.abs(celsius);
  return cls === 'A' ? 0.15 + 0.002 * t : 0.3 + 0.005 * t;
}

/**
 * The temperature (°C) a control believes when the sensor is really at `celsius`
 * and `seriesOhms` of unwanted resistance (a poor plug, a burnt wire) adds to it:
 * always too hot. `outside-the-curve` in Ω means the control sees an open sensor.
 */
export function believedTemperature(sensor: {
  readonly celsius: number;
  readonly r0: number;
  readonly seriesOhms: number;
}): Result<number, RtdProblem> {
  const own = resistanceAt(sensor.celsius, sensor.r0);
  return own.ok ? temperatureAt(own.value + sensor.seriesOhms, sensor.r0) : own;
}
