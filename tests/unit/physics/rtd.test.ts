import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  believedTemperature,
  resistanceAt,
  rtdRange,
  temperatureAt,
} from '../../../src/physics/rtd.ts';
import {
  differenceInFahrenheit,
  toCelsius,
  toFahrenheit,
} from '../../../src/physics/temperature.ts';

const celsius = fc.double({ ...rtdRange, noNaN: true });
const r0 = fc.constantFrom(100, 200, 500, 1000, 2000);
const slope = fc.constantFrom(3851 as const, 3750 as const);

describe('the platinum curve', () => {
  test('there and back, over the whole range', () => {
    fc.assert(
      fc.property(celsius, r0, slope, (t, r, s) => {
        const ohms = resistanceAt(t, r, s);
        if (!ohms.ok) throw new Error(ohms.error.code);
        const back = temperatureAt(ohms.value, r, s);
        expect(back.ok && Math.abs(back.value - t)).toBeLessThan(1e-9);
      }),
      {
        numRuns: 2000,
        examples: [
          [-200, 100, 3851],
          [-200, 1000, 3750],
          [850, 1000, 3851],
          [850, 1000, 3750],
          [0, 500, 3851],
          [-1e-9, 100, 3851],
          [1e-9, 100, 3750],
        ],
      },
    );
  });

  test('rises everywhere', () => {
    fc.assert(
      fc.property(fc.double({ min: -199, max: 849, noNaN: true }), r0, slope, (t, r, s) => {
        const [low, high] = [resistanceAt(t - 0.01, r, s), resistanceAt(t + 0.01, r, s)];
        if (!low.ok || !high.ok) throw new Error('on the curve');
        expect(high.value).toBeGreaterThan(low.value);
      }),
    );
  });

  test('refuses what is off the curve', () => {
    expect(resistanceAt(-200.1, 100)).toMatchObject({
      error: { code: 'outside-the-curve', field: 'celsius', min: -200, max: 850 },
    });
    expect(resistanceAt(850.1, 100)).toMatchObject({ error: { code: 'outside-the-curve' } });
    for (const ohms of [0, -5, 18.5, 390.5, 1e9])
      expect(temperatureAt(ohms, 100)).toMatchObject({
        error: { code: 'outside-the-curve', field: 'ohms', value: ohms },
      });
  });

  test('refuses what is no number and an R0 that is not positive', () => {
    expect(resistanceAt(NaN, 100)).toMatchObject({ error: { field: 'celsius' } });
    expect(temperatureAt(Infinity, 100)).toMatchObject({
      error: { code: 'not-a-finite-number', field: 'ohms' },
    });
    for (const bad of [0, -100])
      expect(temperatureAt(100, bad)).toEqual({
        ok: false,
        error: { code: 'r0-not-positive', r0: bad },
      });
    expect(resistanceAt(20, NaN)).toMatchObject({ error: { field: 'r0' } });
  });
});

describe('believedTemperature', () => {
  test('added resistance makes the control believe the oven is hotter', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 300, noNaN: true }),
        fc.double({ min: 0.1, max: 500, noNaN: true }),
        (t, seriesOhms) => {
          const believed = believedTemperature({ celsius: t, r0: 1000, seriesOhms });
          expect(believed.ok && believed.value).toBeGreaterThan(t);
        },
      ),
    );
  });

  test('no added resistance, no error', () => {
    const believed = believedTemperature({ celsius: 21, r0: 1000, seriesOhms: 0 });
    expect(believed.ok && believed.value).toBeCloseTo(21, 9);
  });

  test('enough of it looks like an open sensor; bad input stays a problem', () => {
    expect(believedTemperature({ celsius: 21, r0: 1000, seriesOhms: 3000 })).toMatchObject({
      error: { code: 'outside-the-curve', field: 'ohms' },
    });
    expect(believedTemperature({ celsius: 900, r0: 1000, seriesOhms: 0 })).toMatchObject({
      error: { code: 'outside-the-curve', field: 'celsius' },
    });
    expect(believedTemperature({ celsius: 21, r0: 1000, seriesOhms: NaN })).toMatchObject({
      error: { code: 'not-a-finite-number', field: 'ohms' },
    });
  });
});

describe('temperature scales', () => {
  // Fixed points by definition: water freezes at 32 °F and boils at 212 °F; −40 is the same on both.
  test.each([
    [0, 32],
    [100, 212],
    [-40, -40],
  ])('%d °C is %d °F', (c, f) => {
    expect(toFahrenheit(c)).toBeCloseTo(f, 12);
    expect(toCelsius(f)).toBeCloseTo(c, 12);
  });

  test('a difference has no offset', () => {
    expect(differenceInFahrenheit(10)).toBe(18);
  });
});
