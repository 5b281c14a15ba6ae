import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';

/**
 * Platinum resistance thermometers, Callendar and Van Dusen's equation:
 * R(t) = R0·(1 + At + Bt² + C(t − 100)t³), the last term only below 0 °C.
 *
 * Platinum comes with two common slopes, named by the mean rise from 0 to 100 °C in ppm/K.
 * 3851: IEC 60751. 3750: 1000 Ω sensors, no standard; the coefficients stand beside 3851's in the
 * public tables of makers of data-acquisition devices. Nickel-wire and NTC sensors follow others.
 */
const coefficients = {
  3851: { a: 3.9083e-3, b: -5.775e-7, c: -4.183e-12 },
  3750: { a: 3.81e-3, b: -6.02e-7, c: -6e-12 },
} as const;

export type Slope = keyof typeof coefficients;

/** A kind of platinum sensor. */
export interface Sensor {
  /** Ω at 0 °C. */
  readonly r0: number;
  readonly slope: Slope;
}

/** The range of the standard's table, °C; taken for 3750 too, for which no source gives one. */
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
function ratio(t: number, slope: Slope): number {
  const { a, b, c } = coefficients[slope];
  const below = t < 0 ? c * (t - 100) * t ** 3 : 0;
  return 1 + a * t + b * t * t + below;
}

/** d(R/R0)/dt per °C, unchecked: positive over the whole range. */
function rise(t: number, slope: Slope): number {
  const { a, b, c } = coefficients[slope];
  const below = t < 0 ? c * (4 * t - 300) * t * t : 0;
  return a + 2 * b * t + below;
}

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
export function resistanceAt(
  celsius: number,
  r0: number,
  slope: Slope = 3851,
): Result<number, RtdProblem> {
  const bad = checkR0(r0) ?? checkCelsius(celsius);
  return bad ? fail(bad) : ok(r0 * ratio(celsius, slope));
}

/**
 * °C at a resistance in Ω. From R0 upward the quadratic is solved exactly, in the
 * form without cancellation near 0 °C; below, Newton's iteration starts from that
 * root, at most 4 °C off at −200 °C, and settles to rounding within four rounds.
 */
export function temperatureAt(
  ohms: number,
  r0: number,
  slope: Slope = 3851,
): Result<number, RtdProblem> {
  const bad = checkR0(r0);
  if (bad) return fail(bad);
  if (!Number.isFinite(ohms)) return fail({ code: 'not-a-finite-number', field: 'ohms' });
  const w = ohms / r0;
  const [lowest, highest] = [ratio(rtdRange.min, slope), ratio(rtdRange.max, slope)];
  if (w < lowest - ROUNDING || w > highest + ROUNDING) {
    const [min, max] = [r0 * lowest, r0 * highest];
    return fail({ code: 'outside-the-curve', field: 'ohms', value: ohms, min, max });
  }
  const excess = w - 1;
  const { a, b } = coefficients[slope];
  let t = (2 * excess) / (a + Math.sqrt(a * a + 4 * b * excess));
  if (t < 0) for (let round = 0; round < 4; round++) t -= (ratio(t, slope) - w) / rise(t, slope);
  return ok(Math.min(rtdRange.max, Math.max(rtdRange.min, t)));
}

export type ToleranceClass = 'A' | 'B';

/**
 * The standard's tolerance in ± °C: class A 0.15 + 0.002|t|, class B 0.30 + 0.005|t|.
 * The formula is given for any temperature; see `classBAt` for where it holds.
 */
export function toleranceAt(celsius: number, cls: ToleranceClass): number {
  const t = Math.abs(celsius);
  return cls === 'A' ? 0.15 + 0.002 * t : 0.3 + 0.005 * t;
}

/**
 * Where the standard grants class B to a sensor of either build, °C: film, and within it
 * wire-wound, granted to 600 °C (from memory). Which build an oven's sensor is, nobody sees.
 */
const classBRange = { min: -50, max: 500 } as const;

/** Class B in ± °C, where the standard grants it: its own slope only, and not at any heat. */
export function classBAt(celsius: number, slope: Slope): number | undefined {
  const granted = slope === 3851 && celsius >= classBRange.min && celsius <= classBRange.max;
  return granted ? toleranceAt(celsius, 'B') : undefined;
}

/**
 * The temperature (°C) a control believes when the sensor is really at `celsius`
 * and `seriesOhms` of unwanted resistance (a poor plug, a burnt wire) adds to it:
 * always too hot. `outside-the-curve` in Ω means the control sees an open sensor.
 */
export function believedTemperature(sensor: {
  readonly celsius: number;
  readonly r0: number;
  readonly slope?: Slope;
  readonly seriesOhms: number;
}): Result<number, RtdProblem> {
  const { celsius, r0, slope, seriesOhms } = sensor;
  const own = resistanceAt(celsius, r0, slope);
  return own.ok ? temperatureAt(own.value + seriesOhms, r0, slope) : own;
}
