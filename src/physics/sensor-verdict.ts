import { defined } from '../defined.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { classBAt, resistanceAt, temperatureAt } from './rtd.ts';
import type { RtdProblem, Sensor } from './rtd.ts';

/**
 * `beyond`: above the end of the curve, yet not open; `other-kind`: as another common platinum
 * sensor reads.
 */
export type Verdict = 'fits' | 'drifted' | 'beyond' | 'open' | 'shorted' | 'other-kind';

/**
 * Where one verdict ends and the next begins. All but the class tolerance of the
 * standard are common practice, no source.
 */
export interface SensorLimits {
  /**
   * The band the trade lives with, in ± °C: `offset + slope·|t|`. Wider than class B
   * (0.30 + 0.005|t|) everywhere, because an oven sensor is read with a handheld
   * meter, its leads, and a room temperature that is itself a guess. ±20 Ω for a
   * 1000 Ω sensor at 70 °F.
   */
  readonly trade: { readonly offset: number; readonly slope: number };
  /** At or above this many Ω nothing useful conducts: what is left is leakage. */
  readonly openOhms: number;
  /** At or below this share of R0 the leads touch; the curve itself ends at 0.185. */
  readonly shortedShare: number;
  /** Common platinum sensors that a reading is compared with. */
  readonly others: readonly Sensor[];
}

export const sensorLimits: SensorLimits = {
  trade: { offset: 5, slope: 0.01 },
  openOhms: 500_000,
  shortedShare: 0.05,
  others: [
    { r0: 100, slope: 3851 },
    { r0: 500, slope: 3851 },
    { r0: 1000, slope: 3851 },
    { r0: 1000, slope: 3750 },
  ],
};

/** What one resistance reading says. Temperatures in °C, `off…` = read − expected. */
export interface SensorFinding {
  readonly verdict: Verdict;
  readonly expectedOhms: number;
  readonly offOhms: number;
  /** What the control believes; missing when the reading is off the curve. */
  readonly believedCelsius?: number;
  readonly offCelsius?: number;
  /** Missing where the standard grants no class. */
  readonly classBCelsius?: number;
  readonly tradeCelsius: number;
  readonly withinClassB: boolean;
  /** The other platinum sensor that this reading fits. */
  readonly other?: Sensor;
}

/** The trade's band at a temperature, ± °C. */
export function tradeToleranceAt(celsius: number, limits: SensorLimits = sensorLimits): number {
  return limits.trade.offset + limits.trade.slope * Math.abs(celsius);
}

/** Degrees by which a reading is off, or undefined when it is off the curve. */
function degreesOff(ohms: number, celsius: number, { r0, slope }: Sensor): number | undefined {
  const believed = temperatureAt(ohms, r0, slope);
  return believed.ok ? believed.value - celsius : undefined;
}

/**
 * Judge one reading of a sensor whose true temperature is known. `ohms` may be
 * Infinity (a meter's overload). Problems: NaN or negative Ω, a temperature off the
 * curve, an R0 that is not positive.
 *
 * Neither direction has a limit: a poor joint adds any resistance, and leakage (damp, a chafed
 * wire) takes any away, 4 kΩ across 1082 Ω leaving 852. So a reading is taken for another kind
 * only where it fits a common one, which is never called drifted: hot, a good sensor of the other
 * slope is as far off as a bad one. Nickel of like resistance one reading cannot tell; a second
 * one, warm, can.
 */
export function sensorVerdict(
  reading: { readonly ohms: number; readonly celsius: number; readonly sensor: Sensor },
  limits: SensorLimits = sensorLimits,
): Result<SensorFinding, RtdProblem> {
  const { ohms, celsius, sensor } = reading;
  const expected = resistanceAt(celsius, sensor.r0, sensor.slope);
  if (!expected.ok) return expected;
  if (Number.isNaN(ohms)) return fail({ code: 'not-a-finite-number', field: 'ohms' });
  if (ohms < 0)
    return fail({ code: 'outside-the-curve', field: 'ohms', value: ohms, min: 0, max: Infinity });

  const off = degreesOff(ohms, celsius, sensor);
  const [classB, trade] = [classBAt(celsius, sensor.slope), tradeToleranceAt(celsius, limits)];
  const fits = (degrees: number | undefined) => degrees !== undefined && Math.abs(degrees) <= trade;
  const other = limits.others.find((one) => fits(degreesOff(ohms, celsius, one)));

  const verdict = ((): Verdict => {
    if (ohms >= limits.openOhms) return 'open';
    if (fits(off)) return 'fits';
    if (other) return 'other-kind';
    if (ohms <= limits.shortedShare * sensor.r0) return 'shorted';
    return off === undefined && ohms > expected.value ? 'beyond' : 'drifted';
  })();

  return ok({
    verdict,
    expectedOhms: expected.value,
    offOhms: ohms - expected.value,
    ...defined({
      believedCelsius: off === undefined ? undefined : celsius + off,
      offCelsius: off,
      classBCelsius: classB,
      other: verdict === 'other-kind' ? other : undefined,
    }),
    tradeCelsius: trade,
    withinClassB: off !== undefined && classB !== undefined && Math.abs(off) <= classB,
  });
}
