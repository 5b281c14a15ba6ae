import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { resistanceAt, temperatureAt, toleranceAt } from './rtd.ts';
import type { RtdProblem } from './rtd.ts';

export type Verdict = 'fits' | 'drifted' | 'open' | 'shorted' | 'other-kind';

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
  /**
   * A platinum sensor reads low only through damp or a partial short, and not by much:
   * further than this below the true temperature (°C), take it for another kind.
   * There is no such limit upward, where a poor connection can add any resistance.
   */
  readonly lowestDrift: number;
  /** Other common platinum sensors, Ω at 0 °C, that a reading is compared with. */
  readonly otherR0: readonly number[];
}

export const sensorLimits: SensorLimits = {
  trade: { offset: 5, slope: 0.01 },
  openOhms: 500_000,
  shortedShare: 0.05,
  lowestDrift: 50,
  otherR0: [100, 500, 1000],
};

/** What one resistance reading says. Temperatures in °C, `off…` = read − expected. */
export interface SensorFinding {
  readonly verdict: Verdict;
  readonly expectedOhms: number;
  readonly offOhms: number;
  /** What the control believes; missing when the reading is off the curve. */
  readonly believedCelsius?: number;
  readonly offCelsius?: number;
  readonly classBCelsius: number;
  readonly tradeCelsius: number;
  readonly withinClassB: boolean;
  /** The R0 of another platinum sensor that this reading fits. */
  readonly fitsR0?: number;
}

/** The trade's band at a temperature, ± °C. */
export function tradeToleranceAt(celsius: number, limits: SensorLimits = sensorLimits): number {
  return limits.trade.offset + limits.trade.slope * Math.abs(celsius);
}

/** Degrees by which a reading is off, or undefined when it is off the curve. */
function degreesOff(ohms: number, celsius: number, r0: number): number | undefined {
  const believed = temperatureAt(ohms, r0);
  return believed.ok ? believed.value - celsius : undefined;
}

/**
 * Judge one reading of a sensor whose true temperature is known. `ohms` may be
 * Infinity (a meter's overload). Problems: NaN or negative Ω, a temperature off the
 * curve, an R0 that is not positive. One reading cannot tell a drifted platinum
 * sensor from, say, a nickel one of like resistance: a second one, warm, can.
 */
export function sensorVerdict(
  reading: { readonly ohms: number; readonly celsius: number; readonly r0: number },
  limits: SensorLimits = sensorLimits,
): Result<SensorFinding, RtdProblem> {
  const { ohms, celsius, r0 } = reading;
  const expected = resistanceAt(celsius, r0);
  if (!expected.ok) return expected;
  if (Number.isNaN(ohms)) return fail({ code: 'not-a-finite-number', field: 'ohms' });
  if (ohms < 0)
    return fail({ code: 'outside-the-curve', field: 'ohms', value: ohms, min: 0, max: Infinity });

  const off = degreesOff(ohms, celsius, r0);
  const [classB, trade] = [toleranceAt(celsius, 'B'), tradeToleranceAt(celsius, limits)];
  const fitsR0 = limits.otherR0.find((other) => {
    if (other === r0) return false;
    const degrees = degreesOff(ohms, celsius, other);
    return degrees !== undefined && Math.abs(degrees) <= trade;
  });

  const verdict = ((): Verdict => {
    if (ohms >= limits.openOhms) return 'open';
    if (off !== undefined && Math.abs(off) <= trade) return 'fits';
    if (fitsR0 !== undefined) return 'other-kind';
    if (ohms <= limits.shortedShare * r0) return 'shorted';
    if (off === undefined || off < -limits.lowestDrift) return 'other-kind';
    return 'drifted';
  })();

  return ok({
    verdict,
    expectedOhms: expected.value,
    offOhms: ohms - expected.value,
    ...(off === undefined ? {} : { believedCelsius: celsius + off, offCelsius: off }),
    classBCelsius: classB,
    tradeCelsius: trade,
    withinClassB: off !== undefined && Math.abs(off) <= classB,
    ...(verdict === 'other-kind' && fitsR0 !== undefined ? { fitsR0 } : {}),
  });
}
