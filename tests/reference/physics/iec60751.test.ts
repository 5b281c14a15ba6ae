import { describe, expect, test } from 'vitest';
import { resistanceAt, temperatureAt, toleranceAt } from '../../../src/physics/rtd.ts';
import { toCelsius, toFahrenheit } from '../../../src/physics/temperature.ts';

function value<T>(result: { ok: true; value: T } | { ok: false; error: { code: string } }): T {
  if (!result.ok) throw new Error(result.error.code);
  return result.value;
}

/** IEC 60751, table of a 100 Ω platinum sensor, °C → Ω, to three decimals. */
const pt100 = [
  [-200, 18.52],
  [-50, 80.306],
  [0, 100],
  [25, 109.735],
  [50, 119.397],
  [100, 138.506],
  [200, 175.856],
  [250, 194.098],
  [300, 212.052],
  [400, 247.092],
  [500, 280.978],
  [600, 313.708],
  [850, 390.481],
] as const;

/** Computed from the equation of IEC 60751 by hand calculator, 1000 Ω, °F → Ω. */
const pt1000 = [
  [70, 1082.25],
  [75, 1093.04],
  [200, 1359.74],
  [300, 1569.1],
  [500, 1977.12],
  [600, 2175.78],
  [900, 2750.38],
] as const;

/** Computed from the equation of IEC 60751, 1000 Ω, Ω → °F. */
const inverse = [
  [1091, 74.06],
  [1100, 78.23],
  [2000, 511.43],
  [2500, 767.21],
] as const;

describe('IEC 60751', () => {
  test.each(pt100)('100 Ω sensor at %d °C: %d Ω', (celsius, ohms) => {
    // Not toFixed: 138.5055 and 212.0515 lie on the edge between two roundings.
    expect(Math.abs(value(resistanceAt(celsius, 100)) - ohms)).toBeLessThan(0.0005 + 1e-9);
    // Three decimals of Ω are worth at most 0.002 °C.
    expect(value(temperatureAt(ohms, 100))).toBeCloseTo(celsius, 2);
  });

  test.each(pt1000)('1000 Ω sensor at %d °F: %d Ω', (fahrenheit, ohms) => {
    expect(value(resistanceAt(toCelsius(fahrenheit), 1000)).toFixed(2)).toBe(ohms.toFixed(2));
  });

  test.each(inverse)('1000 Ω sensor at %d Ω: %d °F', (ohms, fahrenheit) => {
    expect(toFahrenheit(value(temperatureAt(ohms, 1000))).toFixed(2)).toBe(fahrenheit.toFixed(2));
  });

  test('is not the older IPTS-68 table, which prints 138.50, 175.84 and 212.03', () => {
    const old = [
      [100, 138.5],
      [200, 175.84],
      [300, 212.03],
    ] as const;
    for (const [celsius, ohms] of old)
      expect(value(resistanceAt(celsius, 100)).toFixed(2)).not.toBe(ohms.toFixed(2));
  });

  test('classes: A ±(0.15 + 0.002|t|), B ±(0.30 + 0.005|t|) °C', () => {
    expect(toleranceAt(100, 'A')).toBeCloseTo(0.35, 12);
    expect(toleranceAt(-100, 'A')).toBeCloseTo(0.35, 12);
    expect(toleranceAt(100, 'B')).toBeCloseTo(0.8, 12);
    expect(toleranceAt(-200, 'B')).toBeCloseTo(1.3, 12);
  });

  test('class B at 70 °F is ±1.58 Ω for a 1000 Ω sensor', () => {
    const t = toCelsius(70);
    const ohms = (celsius: number) => value(resistanceAt(celsius, 1000));
    expect((ohms(t + toleranceAt(t, 'B')) - ohms(t)).toFixed(2)).toBe('1.58');
  });
});
