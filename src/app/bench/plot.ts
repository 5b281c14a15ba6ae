/** The curve as a drawing: figures of an SVG whose size is `size`. Pure. */
import { rtdRange, type Sensor } from '../../physics/rtd.ts';
import { tradeToleranceAt } from '../../physics/sensor-verdict.ts';
import { toCelsius, toFahrenheit } from '../../physics/temperature.ts';
import type { Unit } from './entries.ts';
import { clampedOhms } from './judge.ts';

export const size = { width: 340, height: 250 } as const;
const frame = { left: 46, right: 332, top: 10, bottom: 212 } as const;

/** What an oven sees, °C: drawn when there is no reading to look at closely. */
const OVEN = { min: 0, max: 500 } as const;
/** °C left free on both sides of a reading: the trade's band at a room's temperature fits in. */
const LEAST_ROOM = 15;
/** Straight pieces of the line: the curve is nearly straight. */
const PIECES = 50;

/** °C from end to end: close around a reading whose true and believed temperature are known. */
function domainOf(shown: readonly number[]): { readonly min: number; readonly max: number } {
  const [low, high] = [Math.min(...shown), Math.max(...shown)];
  if (shown.length < 2) return low >= OVEN.min && high <= OVEN.max ? OVEN : whole(shown);
  const room = Math.max(LEAST_ROOM, 0.4 * (high - low));
  return { min: Math.max(rtdRange.min, low - room), max: Math.min(rtdRange.max, high + room) };
}

/** The oven's range, unless something lies outside. */
const whole = (shown: readonly number[]) => (shown.length === 0 ? OVEN : rtdRange);

export interface Tick {
  readonly at: number;
  readonly value: number;
}

export interface Plot {
  readonly curve: string;
  /** The trade's band, as the points of a polygon. */
  readonly band: string;
  readonly x: readonly Tick[];
  readonly y: readonly Tick[];
  readonly frame: typeof frame;
  /** Where a point lies; the frame's edge when it is outside. */
  place(celsius: number, ohms: number): { readonly x: number; readonly y: number };
}

/** About five steps of 1, 2 or 5 times a power of ten. */
function ticks(min: number, max: number): number[] {
  const rough = (max - min) / 5;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((one) => one >= rough) ?? rough;
  const first = Math.ceil(min / step);
  const count = Math.floor(max / step) - first + 1;
  return Array.from({ length: count }, (_, index) => (first + index) * step);
}

/** @param shown the sensor's true and believed temperature in °C, as far as they are known */
export function plotOf(sensor: Sensor, unit: Unit, shown: readonly number[]): Plot {
  const { min, max } = domainOf(shown);
  const [low, high] = [clampedOhms(min, sensor), clampedOhms(max, sensor)];
  const along = (part: number, from: number, to: number) =>
    from + Math.min(1, Math.max(0, part)) * (to - from);
  const x = (celsius: number) => along((celsius - min) / (max - min), frame.left, frame.right);
  const y = (ohms: number) => along((ohms - low) / (high - low), frame.bottom, frame.top);
  const point = (celsius: number, ohms: number) => `${x(celsius).toFixed(1)},${y(ohms).toFixed(1)}`;
  const line = Array.from(
    { length: PIECES + 1 },
    (_, index) => min + ((max - min) * index) / PIECES,
  );
  const inUnit = (celsius: number) => (unit === 'F' ? toFahrenheit(celsius) : celsius);
  const fromUnit = (value: number) => (unit === 'F' ? toCelsius(value) : value);
  return {
    curve: line.map((celsius) => point(celsius, clampedOhms(celsius, sensor))).join(' '),
    band: [
      ...line.map((celsius) =>
        point(celsius, clampedOhms(celsius + tradeToleranceAt(celsius), sensor)),
      ),
      ...line
        .toReversed()
        .map((celsius) => point(celsius, clampedOhms(celsius - tradeToleranceAt(celsius), sensor))),
    ].join(' '),
    x: ticks(inUnit(min), inUnit(max)).map((value) => ({ value, at: x(fromUnit(value)) })),
    y: ticks(low, high).map((value) => ({ value, at: y(value) })),
    frame,
    place: (celsius, ohms) => ({ x: x(celsius), y: y(ohms) }),
  };
}
