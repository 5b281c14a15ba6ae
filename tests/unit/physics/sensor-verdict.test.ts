import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { resistanceAt, rtdRange, toleranceAt } from '../../../src/physics/rtd.ts';
import {
  sensorLimits,
  sensorVerdict,
  tradeToleranceAt,
} from '../../../src/physics/sensor-verdict.ts';
import { toCelsius } from '../../../src/physics/temperature.ts';

const room = toCelsius(70);

function verdict(ohms: number, r0 = 1000, celsius = room) {
  const finding = sensorVerdict({ ohms, celsius, r0 });
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
    [1061, 'drifted'],
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
    [300, 'other-kind'],
    [600, 'other-kind'],
    [5000, 'other-kind'],
    [120_000, 'other-kind'],
  ])('%d Ω where 1000 Ω at 0 °C is expected: %s', (ohms, expected) => {
    expect(verdict(ohms).verdict).toBe(expected);
  });

  test('names the platinum sensor that a reading would fit', () => {
    expect(verdict(108.2).fitsR0).toBe(100);
    expect(verdict(541).fitsR0).toBe(500);
    expect(verdict(1082, 100)).toMatchObject({ verdict: 'other-kind', fitsR0: 1000 });
    expect(verdict(300)).not.toHaveProperty('fitsR0');
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

describe('sensorVerdict in general', () => {
  const celsius = fc.double({ ...rtdRange, noNaN: true });
  const r0 = fc.constantFrom(100, 500, 1000);

  test('a sensor on its curve fits, at every temperature and for every R0', () => {
    fc.assert(
      fc.property(celsius, r0, (t, r) => {
        const ohms = resistanceAt(t, r);
        if (!ohms.ok) throw new Error(ohms.error.code);
        expect(verdict(ohms.value, r, t)).toMatchObject({ verdict: 'fits', withinClassB: true });
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
    const known = ['fits', 'drifted', 'open', 'shorted', 'other-kind'];
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
    const finding = sensorVerdict({ ohms: 1085, celsius: room, r0: 1000 }, strict);
    expect(finding.ok && finding.value.verdict).toBe('drifted');
  });

  test('refuses what is no resistance, no temperature of the curve, no R0', () => {
    const at = { ohms: 1080, celsius: room, r0: 1000 };
    expect(sensorVerdict({ ...at, ohms: NaN })).toMatchObject({ error: { field: 'ohms' } });
    expect(sensorVerdict({ ...at, ohms: -1 })).toMatchObject({
      error: { code: 'outside-the-curve', field: 'ohms', value: -1 },
    });
    expect(sensorVerdict({ ...at, celsius: 1000 })).toMatchObject({
      error: { code: 'outside-the-curve', field: 'celsius' },
    });
    expect(sensorVerdict({ ...at, r0: 0 })).toMatchObject({ error: { code: 'r0-not-positive' } });
  });
});
