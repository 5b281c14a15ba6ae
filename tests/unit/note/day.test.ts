import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dayOf, madeOn } from '../../../src/note/day.ts';

const day = 86_400_000;

test('numbers days from the epoch', () => {
  expect(dayOf(new Date('1970-01-01'))).toBe(0);
  expect(dayOf(new Date('1970-02-01T23:59:59Z'))).toBe(31);
  expect(dayOf(new Date('1970-02-02'))).toBe(0);
  expect(dayOf(new Date('1969-12-31T12:00:00Z'))).toBe(31);
});

test('the latest day goes back at most 30 days, or is tomorrow', () => {
  const moment = fc.integer({ min: 0, max: 4_000_000_000 });
  fc.assert(
    fc.property(moment, fc.integer({ min: 0, max: 31 }), (seconds, number) => {
      const today = new Date(seconds * 1000);
      const { latest, earlier } = madeOn(number, today);
      const midnight = Math.floor(today.getTime() / day) * day;
      const back = (midnight - latest.getTime()) / day;
      expect(Number.isInteger(back)).toBe(true);
      expect(back).toBeGreaterThanOrEqual(-1);
      expect(back).toBeLessThanOrEqual(30);
      expect(dayOf(latest)).toBe(number);
      expect(dayOf(earlier)).toBe(number);
      expect(latest.getTime() - earlier.getTime()).toBe(32 * day);
    }),
  );
});

test('a note made today is made today, one made tomorrow elsewhere tomorrow', () => {
  const today = new Date('2026-11-25T04:00:00Z');
  const isoOf = (made: Date): string =>
    madeOn(dayOf(made), today).latest.toISOString().slice(0, 10);
  expect(isoOf(today)).toBe('2026-11-25');
  expect(isoOf(new Date('2026-11-26'))).toBe('2026-11-26');
  expect(isoOf(new Date('2026-10-26'))).toBe('2026-10-26');
  // 31 days back is the first day that cannot be told from tomorrow.
  expect(isoOf(new Date('2026-10-25'))).toBe('2026-11-26');
});
