import { expect, test } from 'vitest';
import { resistanceAt, temperatureAt } from '../../../src/physics/rtd.ts';
import { toCelsius, toFahrenheit } from '../../../src/physics/temperature.ts';

function ohms(celsius: number): number {
  const found = resistanceAt(celsius, 1000, 3750);
  return found.ok ? found.value : Number.NaN;
}

// Public tables of data-acquisition makers list, for 1000 Ω platinum: α 0.00375 ± 0.000029 per °C,
// δ 1.605 ± 0.009 °C, β 0.16, and the A, B and C of `rtd.ts`. They must belong together:
// α = (R(100) − R0) / 100 R0, and in Callendar's form R(t) − R0 − 100 α R0 t/100 = −α δ R0 (t/100)(t/100 − 1).
test('α and δ are those published', () => {
  const alpha = (ohms(100) - 1000) / 1e5;
  expect(Math.abs(alpha - 0.00375)).toBeLessThan(1e-6);
  const bend = ohms(200) - 1000 - alpha * 1000 * 200;
  expect(bend / (-2 * alpha * 1000)).toBeCloseTo(1.605, 3);
});

test('β, which counts below 0 °C only, is the one published', () => {
  const alpha = (ohms(100) - 1000) / 1e5;
  const above = (t: number) => 1000 * alpha * (t - 1.605 * (t / 100) * (t / 100 - 1)) + 1000;
  // Callendar and Van Dusen: −α β R0 (t/100 − 1)(t/100)³, at −100 °C −2 α β R0.
  expect((above(-100) - ohms(-100)) / (2 * alpha * 1000)).toBeCloseTo(0.16, 2);
});

// Charts of oven sensors (from memory, no source).
test.each([
  [75, 1091],
  [350, 1654],
  [900, 2697],
])('%d °F: %d Ω, and back', (fahrenheit, chart) => {
  expect(ohms(toCelsius(fahrenheit)).toFixed(0)).toBe(String(chart));
  const back = temperatureAt(chart, 1000, 3750);
  expect(toFahrenheit(back.ok ? back.value : NaN)).toBeCloseTo(fahrenheit, 0);
});
