import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { classBAt, resistanceAt, rtdRange, toleranceAt } from '../../../src/physics/rtd.ts';
import {
  sensorLimits,
  sensorVerdict,
  tradeToleranceAt,
} from '../../../src/physics/sensor-verdict.ts';
import { toCelsius } from '../../../src/physics/temperature.ts';
import type { Slope } from '../../../src/physics/rtd.ts';

const room = toCelsius(70);

function verdict(ohms: number, r0 = 1000, celsius = room, slope: Slope = 3851) {
  const finding = sensorVerdict({ ohms, celsius, sensor: { r0, slope } });
  if (!finding.ok) throw new Error(finding.error.code);
  return finding.value;
}

describe('sensorVerdict at 70 °F', () => {
  // About 1080 Ω at 70 °F for the commonest sensor: common practice, no source.
  test.each([
    [1080, 'fits'],
    [1082.25, 'fits'],
    [1063, 'fits'],
    [1102, 'fits'],
    [1060, 'drifted'],
    [1104, 'drifted'],
    [2000, 'drifted'],
    [900, 'drifted'],
    [Infinity, 'open'],
    [500_000, 'open'],
    [2e6, 'open'],
    [0, 'shorted'],
    [3, 'shorted'],
    [50, 'shorted'],
    [108.2, 'other-kind'],
    [541, 'other-kind'],
    // Leakage has no limit downward: 4 and 5 kΩ across a good sensor, and worse.
    [852, 'drifted'],
    [890, 'drifted'],
    [600, 'drifted'],
    [300, 'drifted'],
    [100, 'drifted'],
    // The curve ends at 3904.8 Ω; a bad joint does not.
    [3900, 'drifted'],
    [3910, 'beyond'],
    [5000, 'beyond'],
    [120_000, 'beyond'],
    [499_999, 'beyond'],
  ])('%d Ω where 1000 Ω at 0 °C is expected: %s', (ohms, expected) => {
    expect(verdict(ohms).verdict).toBe(expected);
  });

  test('names the platinum sensor that a reading would fit', () => {
    expect(verdict(108.2).other).toEqual({ r0: 100, slope: 3851 });
    expect(verdict(541).other).toEqual({ r0: 500, slope: 3851 });
    expect(verdict(1082, 100)).toMatchObject({
      verdict: 'other-kind',
      other: { r0: 1000, slope: 3851 },
    });
    expect(verdict(300)).not.toHaveProperty('other');
  });

  test('gives the facts behind the verdict', () => {
    const facts = verdict(2000);
    expect(facts.expectedOhms).toBeCloseTo(1082.25, 2);
    expect(facts.offOhms).toBeCloseTo(917.75, 2);
    // 2000 Ω is 511.43 °F on the curve of IEC 60751.
    expect(facts.believedCelsius).toBeCloseTo(toCelsius(511.43), 2);
    expect(facts.offCelsius).toBeCloseTo(toCelsius(511.43) - room, 2);
    expect(facts.withinClassB).toBe(false);
    expect(verdict(Infinity)).not.toHaveProperty('believedCelsius');
  });

  test('tells class B (±1.58 Ω) from the wider band of the trade', () => {
    expect(verdict(1083.8)).toMatchObject({ verdict: 'fits', withinClassB: true });
    expect(verdict(1083.9)).toMatchObject({ verdict: 'fits', withinClassB: false });
  });
});

describe('two slopes of platinum', () => {
  // Charts of 1000 Ω, 3750 ppm/K sensors: 1091 Ω at 75 °F, 1654 at 350, 2697 at 900 (from memory).
  test.each([
    [1091, 75],
    [1654, 350],
    [2697, 900],
  ])('%d Ω at %d °F is a good 3750 sensor', (ohms, fahrenheit) => {
    const facts = verdict(ohms, 1000, toCelsius(fahrenheit), 3750);
    expect(facts.verdict).toBe('fits');
    expect(Math.abs(facts.offOhms)).toBeLessThan(0.5);
  });

  test('hot, a good sensor of the other slope is not called drifted', () => {
    const other = { verdict: 'other-kind', other: { r0: 1000, slope: 3750 } };
    expect(verdict(2697, 1000, toCelsius(900))).toMatchObject(other);
    // 3851's own values (computed from the standard), judged as 3750.
    const reversed = { verdict: 'other-kind', other: { r0: 1000, slope: 3851 } };
    expect(verdict(2750.38, 1000, toCelsius(900), 3750)).toMatchObject(reversed);
    // At 350 °F the band of the trade holds both.
    expect(verdict(1654, 1000, toCelsius(350)).verdict).toBe('fits');
  });

  test('class B is the standard’s: for its slope, and as far as it grants the class', () => {
    expect(verdict(1082.25)).toMatchObject({
      withinClassB: true,
      classBCelsius: 0.3 + 0.005 * room,
    });
    expect(verdict(1080.2, 1000, room, 3750)).not.toHaveProperty('classBCelsius');
    const hot = verdict(1977.12 * 1.2, 1000, 520);
    expect(hot).not.toHaveProperty('classBCelsius');
    expect(hot.withinClassB).toBe(false);
  });
});

describe('sensorVerdict in general', () => {
  const celsius = fc.double({ ...rtdRange, noNaN: true });
  const r0 = fc.constantFrom(100, 500, 1000);

  const slope = fc.constantFrom(3851 as const, 3750 as const);

  test('a sensor on its curve fits, at every temperature, for every R0 and slope', () => {
    fc.assert(
      fc.property(celsius, r0, slope, (t, r, s) => {
        const ohms = resistanceAt(t, r, s);
        if (!ohms.ok) throw new Error(ohms.error.code);
        const withinClassB = s === 3851 && t >= -50 && t <= 500;
        expect(verdict(ohms.value, r, t, s)).toMatchObject({ verdict: 'fits', withinClassB });
        expect(classBAt(t, s) !== undefined).toBe(withinClassB);
      }),
    );
  });

  test('every resistance gets one verdict', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(
        fc.double({ min: 0, noNaN: true }),
        fc.nat(5000),
        celsius,
        r0,
        (any, near, t, r) => {
          seen.add(verdict(any, r, t).verdict);
          seen.add(verdict(near, r, t).verdict);
        },
      ),
    );
    expect(seen.size).toBeGreaterThan(2);
    const known = ['fits', 'drifted', 'beyond', 'open', 'shorted', 'other-kind'];
    for (const one of seen) expect(known).toContain(one);
  });

  test('the band of the trade is wider than class B everywhere', () => {
    fc.assert(
      fc.property(celsius, (t) => {
        expect(tradeToleranceAt(t)).toBeGreaterThan(toleranceAt(t, 'B'));
      }),
    );
  });

  test('takes other limits', () => {
    const strict = { ...sensorLimits, trade: { offset: 0.3, slope: 0.005 } };
    const finding = sensorVerdict(
      { ohms: 1085, celsius: room, sensor: { r0: 1000, slope: 3851 } },
      strict,
    );
    expect(finding.ok && finding.value.verdict).toBe('drifted');
  });

  test('refuses what is no resistance, no temperature of the curve, no R0', () => {
    const at = { ohms: 1080, celsius: room, sensor: { r0: 1000, slope: 3851 } } as const;
    expect(sensorVerdict({ ...at, ohms: NaN })).toMatchObject({ error: { field: 'ohms' } });
    expect(sensorVerdict({ ...at, ohms: -1 })).toMatchObject({
      error: { code: 'outside-the-curve', field: 'ohms', value: -1 },
    });
    expect(sensorVerdict({ ...at, celsius: 1000 })).toMatchObject({
      error: { code: 'outside-the-curve', field: 'celsius' },
    });
    expect(sensorVerdict({ ...at, sensor: { r0: 0, slope: 3851 } })).toMatchObject({
      error: { code: 'r0-not-positive' },
    });
  });
});
