/** What the bench's entries say. Temperatures in °C, resistances in Ω. Pure. */
import { defined } from '../../defined.ts';
import { parseReading, parseResistance, type ReadingProblem } from '../../physics/reading.ts';
import {
  believedTemperature,
  classBAt,
  resistanceAt,
  rtdRange,
  temperatureAt,
  type Sensor,
} from '../../physics/rtd.ts';
import {
  sensorVerdict,
  tradeToleranceAt,
  type SensorFinding,
  type Verdict,
} from '../../physics/sensor-verdict.ts';
import { toCelsius, toFahrenheit } from '../../physics/temperature.ts';
import type { Result } from '../../result.ts';
import { fields, sensorOf, sensors, type Entries, type Field } from './entries.ts';

/** Handheld meters end at some tens of MΩ; wires and plugs add less than a sensor has. */
export const LIMITS = { ohms: 1e8, added: 1e5 } as const;

export interface Band {
  /** ± °C. */
  readonly celsius: number;
  /** Ω at its lower and upper end. */
  readonly low: number;
  readonly high: number;
}

/** What a sensor at a known temperature should read. */
export interface Expected {
  readonly celsius: number;
  readonly ohms: number;
  /** Absent where the standard grants no class. */
  readonly classB?: Band;
  readonly trade: Band;
}

/** Why what was typed cannot be used. */
export type EntryProblem = Exclude<ReadingProblem, { readonly code: 'empty' }>;

export interface Judged {
  /** An empty field has none. */
  readonly problems: Readonly<Partial<Record<Field, EntryProblem>>>;
  /** The reading as typed; Infinity for a meter's overload. */
  readonly ohms?: number;
  /** What the control believes; absent when the reading is off the curve. */
  readonly believed?: number;
  readonly expected?: Expected;
  readonly finding?: SensorFinding;
  /** The same by the sensor of the same R0 and the other slope; no verdict without a reading. */
  readonly twin?: { readonly sensor: Sensor; readonly ohms: number; readonly verdict?: Verdict };
  /** Added resistance, and what the control then believes; it sees an open sensor when absent. */
  readonly added?: { readonly ohms: number; readonly believed?: number };
}

function parse(entries: Entries, field: Field): Result<number, ReadingProblem> {
  if (field === 'ohms') return parseResistance(entries.ohms, LIMITS.ohms);
  if (field === 'added') return parseReading(entries.added, { min: 0, max: LIMITS.added });
  const { min, max } = rtdRange;
  const inUnit = (celsius: number) => (entries.unit === 'F' ? toFahrenheit(celsius) : celsius);
  const read = parseReading(entries.at, { min: inUnit(min), max: inUnit(max) });
  if (!read.ok || entries.unit === 'C') return read;
  // Rounding must not carry the ends of the range over its edge.
  return { ok: true, value: Math.min(max, Math.max(min, toCelsius(read.value))) };
}

/** Ω at a temperature, the curve's end where it is beyond. */
export function clampedOhms(celsius: number, { r0, slope }: Sensor): number {
  const inside = Math.min(rtdRange.max, Math.max(rtdRange.min, celsius));
  const ohms = resistanceAt(inside, r0, slope);
  return ohms.ok ? ohms.value : Number.NaN;
}

function band(celsius: number, width: number, sensor: Sensor): Band {
  return {
    celsius: width,
    low: clampedOhms(celsius - width, sensor),
    high: clampedOhms(celsius + width, sensor),
  };
}

/** What a sensor should read at a temperature on its curve. */
export function expectedAt(celsius: number, sensor: Sensor): Expected {
  const classB = classBAt(celsius, sensor.slope);
  return {
    celsius,
    ohms: clampedOhms(celsius, sensor),
    ...(classB === undefined ? {} : { classB: band(celsius, classB, sensor) }),
    trade: band(celsius, tradeToleranceAt(celsius), sensor),
  };
}

function twinOf(sensor: Sensor): Sensor | undefined {
  return sensors.map(sensorOf).find(({ r0, slope }) => r0 === sensor.r0 && slope !== sensor.slope);
}

const value = <T>(result: Result<T, unknown> | undefined): T | undefined =>
  result?.ok ? result.value : undefined;

/** Judge the entries; each field stands alone, and what both are needed for waits for both. */
export function judge(entries: Entries): Judged {
  const sensor = sensorOf(entries.r0);
  const problems: Partial<Record<Field, EntryProblem>> = {};
  const read: Partial<Record<Field, number>> = {};
  for (const field of fields) {
    const result = parse(entries, field);
    if (result.ok) read[field] = result.value;
    else if (result.error.code !== 'empty') problems[field] = result.error;
  }
  const { ohms, at: celsius, added } = read;
  const { r0, slope } = sensor;
  const believed = ohms === undefined ? undefined : value(temperatureAt(ohms, r0, slope));
  const by = (one: Sensor) =>
    ohms === undefined || celsius === undefined
      ? undefined
      : value(sensorVerdict({ ohms, celsius, sensor: one }));
  const twin = twinOf(sensor);
  const heated =
    added === undefined || celsius === undefined
      ? undefined
      : value(believedTemperature({ celsius, r0, slope, seriesOhms: added }));
  return {
    problems,
    ...defined({
      ohms,
      believed,
      expected: celsius === undefined ? undefined : expectedAt(celsius, sensor),
      finding: by(sensor),
      twin:
        celsius === undefined || !twin
          ? undefined
          : {
              sensor: twin,
              ohms: clampedOhms(celsius, twin),
              ...defined({ verdict: by(twin)?.verdict }),
            },
      added:
        added === undefined || celsius === undefined
          ? undefined
          : { ohms: added, ...defined({ believed: heated }) },
    }),
  };
}
