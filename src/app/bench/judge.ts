/** What the bench's entries say. Temperatures in °C, resistances in Ω. Pure. */
import { defined } from '../../defined.ts';
import { parseReading, parseResistance, type ReadingProblem } from '../../physics/reading.ts';
import {
  believedTemperature,
  resistanceAt,
  rtdRange,
  temperatureAt,
  toleranceAt,
} from '../../physics/rtd.ts';
import {
  sensorVerdict,
  tradeToleranceAt,
  type SensorFinding,
} from '../../physics/sensor-verdict.ts';
import { toCelsius, toFahrenheit } from '../../physics/temperature.ts';
import type { Result } from '../../result.ts';
import { fields, type Entries, type Field, type R0 } from './entries.ts';

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
  readonly classB: Band;
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
export function clampedOhms(celsius: number, r0: R0): number {
  const inside = Math.min(rtdRange.max, Math.max(rtdRange.min, celsius));
  const ohms = resistanceAt(inside, r0);
  return ohms.ok ? ohms.value : Number.NaN;
}

function band(celsius: number, width: number, r0: R0): Band {
  return {
    celsius: width,
    low: clampedOhms(celsius - width, r0),
    high: clampedOhms(celsius + width, r0),
  };
}

/** What a sensor of `r0` Ω at 0 °C should read at a temperature on the curve. */
export function expectedAt(celsius: number, r0: R0): Expected {
  return {
    celsius,
    ohms: clampedOhms(celsius, r0),
    classB: band(celsius, toleranceAt(celsius, 'B'), r0),
    trade: band(celsius, tradeToleranceAt(celsius), r0),
  };
}

const value = <T>(result: Result<T, unknown> | undefined): T | undefined =>
  result?.ok ? result.value : undefined;

/** Judge the entries; each field stands alone, and what both are needed for waits for both. */
export function judge(entries: Entries): Judged {
  const { r0 } = entries;
  const problems: Partial<Record<Field, EntryProblem>> = {};
  const read: Partial<Record<Field, number>> = {};
  for (const field of fields) {
    const result = parse(entries, field);
    if (result.ok) read[field] = result.value;
    else if (result.error.code !== 'empty') problems[field] = result.error;
  }
  const { ohms, at: celsius, added } = read;
  const both = ohms !== undefined && celsius !== undefined;
  const believed = ohms === undefined ? undefined : value(temperatureAt(ohms, r0));
  const finding = both ? value(sensorVerdict({ ohms, celsius, r0 })) : undefined;
  const heated =
    added === undefined || celsius === undefined
      ? undefined
      : value(believedTemperature({ celsius, r0, seriesOhms: added }));
  return {
    problems,
    ...defined({
      ohms,
      believed,
      expected: celsius === undefined ? undefined : expectedAt(celsius, r0),
      finding,
      added:
        added === undefined || celsius === undefined
          ? undefined
          : { ohms: added, ...defined({ believed: heated }) },
    }),
  };
}
