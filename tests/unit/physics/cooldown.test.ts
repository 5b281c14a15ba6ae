import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  cleanCooling,
  cleanedOven,
  coolingWindow,
  remainingWindow,
  tauFrom,
  timeToReach,
} from '../../../src/physics/cooldown.ts';

const oven = { from: 875, room: 70, target: 600, tau: 72 };
const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('timeToReach', () => {
  test('one time constant leaves 1/e of the excess', () => {
    const time = timeToReach({ from: 170, room: 70, target: 70 + 100 / Math.E, tau: 90 });
    expect(time.ok && time.value).toBeCloseTo(90, 9);
  });

  test('is 0 when the body is already at or below the target', () => {
    expect(timeToReach({ ...oven, target: 875 })).toEqual({ ok: true, value: 0 });
    expect(timeToReach({ ...oven, target: 900 })).toEqual({ ok: true, value: 0 });
  });

  test.each([
    [
      { ...oven, target: 70 },
      { code: 'target-not-above-room', target: 70, room: 70 },
    ],
    [
      { ...oven, target: 20 },
      { code: 'target-not-above-room', target: 20, room: 70 },
    ],
    [
      { ...oven, from: 70 },
      { code: 'start-not-above-room', from: 70, room: 70 },
    ],
    [
      { ...oven, tau: 0 },
      { code: 'tau-not-positive', tau: 0 },
    ],
    [
      { ...oven, tau: -1 },
      { code: 'tau-not-positive', tau: -1 },
    ],
    [
      { ...oven, tau: Infinity },
      { code: 'not-a-finite-number', field: 'tau' },
    ],
    [
      { ...oven, room: NaN },
      { code: 'not-a-finite-number', field: 'room' },
    ],
  ])('refuses %o', (cooling, error) => {
    expect(timeToReach(cooling)).toEqual({ ok: false, error });
  });
});

describe('tauFrom', () => {
  test('gives back the time constant that made the readings, on either scale', () => {
    fc.assert(
      fc.property(
        between(-20, 40),
        between(50, 600),
        between(0.05, 0.95),
        between(5, 300),
        (room, excess, share, tau) => {
          const [from, target] = [room + excess, room + excess * share];
          const time = timeToReach({ from, room, target, tau });
          if (!time.ok) throw new Error(time.error.code);
          for (const unit of [(t: number) => t, (t: number) => t * 1.8 + 32]) {
            const found = tauFrom(
              { minute: 7, temperature: unit(from) },
              { minute: 7 + time.value, temperature: unit(target) },
              unit(room),
            );
            expect(found.ok && Math.abs(found.value / tau - 1)).toBeLessThan(1e-9);
          }
        },
      ),
    );
  });

  const at = (minute: number, temperature: number) => ({ minute, temperature });
  test.each([
    [at(5, 200), at(5, 150), 70, { code: 'readings-out-of-order', first: 5, second: 5 }],
    [at(0, 150), at(5, 150), 70, { code: 'not-cooling', first: 150, second: 150 }],
    [at(0, 150), at(5, 70), 70, { code: 'target-not-above-room', target: 70, room: 70 }],
    [at(0, 60), at(5, 50), 70, { code: 'start-not-above-room', from: 60, room: 70 }],
    [at(0, 200), at(NaN, 150), 70, { code: 'not-a-finite-number', field: 'end' }],
  ])('refuses %o then %o', (first, second, room, error) => {
    expect(tauFrom(first, second, room)).toEqual({ ok: false, error });
  });
});

describe('coolingWindow', () => {
  test('runs from the fast case to the slow one', () => {
    const window = coolingWindow(cleanedOven);
    if (!window.ok) throw new Error(window.error.code);
    expect(window.value.earliest).toBeCloseTo(72 * Math.log(805 / 530), 9);
    expect(window.value.latest).toBeCloseTo(131 * Math.log(805 / 130), 9);
  });

  test('refuses a fast case that is slower than the slow one, and a bad case on either side', () => {
    const { fast, slow } = cleanedOven;
    const turned = coolingWindow({ ...cleanedOven, fast: slow, slow: fast });
    expect(!turned.ok && turned.error.code).toBe('window-reversed');
    for (const side of ['fast', 'slow'] as const) {
      const bad = coolingWindow({ ...cleanedOven, [side]: { target: 60, tau: 100 } });
      expect(!bad.ok && bad.error.code).toBe('target-not-above-room');
    }
  });
});

describe('cleanCooling', () => {
  // Common practice, no source: half an hour at the soonest, about four hours at the latest.
  test('is half an hour to four hours', () => {
    expect(cleanCooling).toEqual({ earliest: 30, latest: 240 });
  });

  test('never promises less than the formula does', () => {
    const window = coolingWindow(cleanedOven);
    if (!window.ok) throw new Error(window.error.code);
    expect(cleanCooling.earliest).toBeLessThanOrEqual(window.value.earliest);
    expect(cleanCooling.latest).toBeGreaterThanOrEqual(window.value.latest);
  });
});

describe('remainingWindow', () => {
  const window = { earliest: 30, latest: 240 };
  test.each([
    [0, 30, 240],
    [20, 10, 220],
    [30, 0, 210],
    [239.5, 0, 0.5],
    [1e9, 0, 0],
  ])('after %d minutes', (since, earliest, latest) => {
    expect(remainingWindow(window, since)).toEqual({ earliest, latest });
  });

  test.each([-5, NaN, -Infinity])('a clock that says %d gives the full wait', (since) => {
    expect(remainingWindow(window, since)).toEqual(window);
  });
});
