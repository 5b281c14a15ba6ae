import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { driftFromMiss, meanInterval } from '../../../src/physics/oven-miss.ts';
import { believedTemperature } from '../../../src/physics/rtd.ts';

/** Settings and misses that ovens have, °C and kelvins; no −0. */
const setting = fc.double({ min: 60, max: 290, noNaN: true });
const miss = fc.double({ min: -55, max: 150, noNaN: true }).map((value) => value + 0);
const r0 = fc.constantFrom(100, 1000);
const at = (value: number) => ({ low: value, high: value });
const inOrder = (a: number, b: number) => ({ low: Math.min(a, b), high: Math.max(a, b) });

function drift(given: Parameters<typeof driftFromMiss>[0]) {
  const found = driftFromMiss(given);
  if (!found.ok) throw new Error(found.error.code);
  return found.value;
}

describe('the drift behind a miss', () => {
  test('put in series with a sound sensor, makes the control believe its setting', () => {
    fc.assert(
      fc.property(setting, miss, r0, (set, off, r) => {
        const { ohms } = drift({ set: at(set), miss: at(off), r0: r });
        const believed = believedTemperature({ celsius: set + off, r0: r, seriesOhms: ohms.low });
        if (!believed.ok) throw new Error(believed.error.code);
        expect(Math.abs(believed.value - set)).toBeLessThan(1e-8);
      }),
    );
  });

  test('reads low in an oven that runs hot, high in one that runs cool, none in neither', () => {
    fc.assert(
      fc.property(setting, miss, r0, (set, off, r) => {
        const { ohms, kelvins } = drift({ set: at(set), miss: at(off), r0: r });
        // Below a billionth of a kelvin the two resistances may round to the same one.
        fc.pre(off === 0 || Math.abs(off) > 1e-9);
        expect(Math.sign(ohms.low)).toBe(-Math.sign(off) + 0);
        expect(kelvins.low).toBeCloseTo(-off, 12);
      }),
      { examples: [[175, 0, 1000]] },
    );
  });

  test('falls as the miss grows', () => {
    fc.assert(
      fc.property(
        setting,
        miss,
        fc.double({ min: 1e-6, max: 100, noNaN: true }),
        (set, off, more) => {
          const less = drift({ set: at(set), miss: at(off), r0: 1000 });
          const greater = drift({ set: at(set), miss: at(off + more), r0: 1000 });
          expect(greater.ohms.low).toBeLessThan(less.ohms.low);
        },
      ),
    );
  });

  test('lies within the band of every setting and miss inside theirs, and reaches its ends', () => {
    const inside = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(setting, setting, miss, miss, inside, inside, (s, s2, m, m2, share, part) => {
        const [set, off] = [inOrder(s, s2), inOrder(m, m2)];
        const whole = drift({ set, miss: off, r0: 1000 }).ohms;
        const one = drift({
          set: at(set.low + share * (set.high - set.low)),
          miss: at(off.low + part * (off.high - off.low)),
          r0: 1000,
        }).ohms.low;
        expect(one).toBeGreaterThanOrEqual(whole.low - 1e-9);
        expect(one).toBeLessThanOrEqual(whole.high + 1e-9);
        const corners = [set.low, set.high].flatMap((corner) =>
          [off.low, off.high].map(
            (end) => drift({ set: at(corner), miss: at(end), r0: 1000 }).ohms.low,
          ),
        );
        expect(corners).toContain(whole.low);
        expect(corners).toContain(whole.high);
      }),
    );
  });

  test('is open where the miss is', () => {
    const hot = drift({ set: at(175), miss: { low: 30, high: Infinity }, r0: 1000 });
    expect(hot.ohms.low).toBe(-Infinity);
    expect(hot.ohms.high).toBeLessThan(0);
    expect(hot.kelvins).toEqual({ low: -Infinity, high: -30 });
    const cool = drift({ set: at(175), miss: { low: -Infinity, high: -30 }, r0: 1000 });
    expect(cool.ohms.low).toBeGreaterThan(0);
    expect(cool.ohms.high).toBe(Infinity);
  });

  test.each([
    [{ set: at(175), miss: { low: 2, high: 1 }, r0: 1000 }, 'empty-interval'],
    [{ set: at(NaN), miss: at(1), r0: 1000 }, 'empty-interval'],
    [{ set: at(175), miss: at(900), r0: 1000 }, 'outside-the-curve'],
    [{ set: at(175), miss: at(1), r0: 0 }, 'r0-not-positive'],
  ])('is refused with a reason: %j', (given, code) => {
    const found = driftFromMiss(given);
    expect(found.ok ? 'ok' : found.error.code).toBe(code);
  });
});

describe('the mean of intervals', () => {
  test('is their ends’ mean, open where one is open, and none of none', () => {
    expect(meanInterval([])).toBeUndefined();
    expect(
      meanInterval([
        { low: 20, high: 50 },
        { low: -20, high: 20 },
      ]),
    ).toEqual({ low: 0, high: 35 });
    expect(
      meanInterval([
        { low: 50, high: Infinity },
        { low: 20, high: 50 },
      ]),
    ).toEqual({ low: 35, high: Infinity });
  });

  test('holds the mean of any values inside', () => {
    const value = fc.double({ min: -200, max: 200, noNaN: true });
    fc.assert(
      fc.property(
        fc.array(fc.tuple(value, value, fc.double({ min: 0, max: 1, noNaN: true })), {
          minLength: 1,
          maxLength: 5,
        }),
        (all) => {
          const mean = meanInterval(all.map(([a, b]) => inOrder(a, b)));
          const middle =
            all.reduce((sum, [a, b, share]) => sum + a + share * (b - a), 0) / all.length;
          expect(mean && mean.low - 1e-9 <= middle && middle <= mean.high + 1e-9).toBe(true);
        },
      ),
    );
  });
});
