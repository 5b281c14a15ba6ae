import { describe, expect, it } from 'vitest';
import { nameOfDay, openState, timeOfDay } from '../../../src/app/shared/open-now.ts';
import type { OpenHours } from '../../../src/app/shared/open-now.ts';

const HOURS: OpenHours = {
  zone: 'America/New_York',
  open: [
    [],
    [
      [480, 720],
      [780, 1050],
    ],
    [[480, 1050]],
    [],
    [],
    [[480, 1050]],
    [],
  ],
  holidays: { '2026-12-25': [], '2026-12-26': [[600, 660]] },
};

describe('whether the firm is open, by its own clock', () => {
  // 2026-11-30 is a Monday; New York is five hours behind UTC then, four in summer (IANA tz).
  it.each([
    ['2026-11-30T13:00:00Z', { open: true, until: 720 }],
    ['2026-11-30T12:59:00Z', { open: false, next: { day: 0, ahead: 0, from: 480 } }],
    ['2026-11-30T17:00:00Z', { open: false, next: { day: 0, ahead: 0, from: 780 } }],
    ['2026-11-30T22:30:00Z', { open: false, next: { day: 1, ahead: 1, from: 480 } }],
    // Already Tuesday in UTC, still Monday evening there.
    ['2026-12-01T02:00:00Z', { open: false, next: { day: 1, ahead: 1, from: 480 } }],
    ['2026-12-02T15:00:00Z', { open: false, next: { day: 4, ahead: 2, from: 480 } }],
    // Christmas is a Friday; the Saturday after has hours of its own.
    ['2026-12-25T15:00:00Z', { open: false, next: { day: 5, ahead: 1, from: 600 } }],
    ['2026-12-26T15:30:00Z', { open: true, until: 660 }],
    ['2026-07-06T12:00:00Z', { open: true, until: 720 }],
  ])('at %s: %j', (now, state) => {
    expect(openState(HOURS, new Date(now))).toEqual(state);
  });

  it('says only that it is closed where nothing opens in two weeks', () => {
    expect(openState({ ...HOURS, open: [], holidays: {} }, new Date())).toEqual({ open: false });
  });
});

it('writes times and days as the region does', () => {
  // CLDR puts narrow spaces, no-break ones or plain ones, by its version.
  const times = [timeOfDay('en', 420), timeOfDay('en-GB', 1050), timeOfDay('en-CA', 420)];
  expect(times.map((time) => time.replaceAll(/\s/g, ' '))).toEqual(['7 AM', '5:30 pm', '7 a.m.']);
  // Office québécois de la langue française, Banque de dépannage linguistique: "7 h", not "07 h".
  expect([timeOfDay('fr-CA', 420), timeOfDay('fr-CA', 1140)]).toEqual(['7\u00A0h', '19\u00A0h']);
  expect([nameOfDay('en', 0), nameOfDay('en-GB', 6)]).toEqual(['Monday', 'Sunday']);
});
