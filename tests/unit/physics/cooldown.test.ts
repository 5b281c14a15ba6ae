import { describe, expect, test } from 'vitest';
import {
  cleanCooling,
  reachCooling,
  cleanedOven,
  coolingWindow,
  timeToReach,
} from '../../../src/physics/cooldown.ts';

const oven = { from: 875, room: 70, target: 600, tau: 72 };

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

describe('reachCooling', () => {
  test('is hours longer than the wait for the lock: Newton’s law by hand, to 110 °F', () => {
    // 72·ln((350−70)/(110−70)) = 140.1 and 131·ln((875−70)/(110−70)) = 393.3 minutes.
    expect(reachCooling).toEqual({ earliest: 140, latest: 395 });
  });
});
