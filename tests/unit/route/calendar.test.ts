// The calendar file, as another program reads it: ical.js, which parses RFC 5545.
import fc from 'fast-check';
import ICAL from 'ical.js';
import { expect, test } from 'vitest';
import { jobLabels } from '../../../src/app/shared/job-text.ts';
import { staffWords } from '../../../src/cli/words.ts';
import { calendarOf } from '../../../src/route/calendar.ts';
import { callerIn, knownColumns, windowOf } from '../../../src/route/known.ts';

const now = new Date('2026-11-27T18:00:00Z');
const text = fc
  .string({ unit: 'grapheme', maxLength: 120 })
  .map((said) => said.replace(/\s+/gu, ' ').trim());

test('a calendar says what the route says, hostile words and all', () => {
  const visit = fc.record({
    id: fc.stringMatching(/^[A-Z0-9-]{4,20}$/),
    day: fc.constantFrom('2026-11-28', '2026-12-31', '2028-02-29'),
    window: fc.option(
      fc.constantFrom(
        { from: 480 },
        { from: 480, to: 600 },
        { day: '2026-03-08', from: 150, to: 1439 },
      ),
      { nil: undefined },
    ),
    title: text.filter((said) => said !== ''),
    place: text,
    text: fc.array(text, { maxLength: 3 }).map((lines) => lines.join('\n').trim()),
  });
  fc.assert(
    fc.property(fc.array(visit, { maxLength: 8 }), (visits) => {
      const file = calendarOf('Route', 'range.example', visits, now);
      // Section 3.1: lines end in CRLF and have at most 75 octets.
      for (const line of file.split('\r\n')) {
        expect(line).not.toMatch(/[\r\n]/);
        expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75);
      }
      const events = new ICAL.Component(ICAL.parse(file) as unknown[])
        .getAllSubcomponents('vevent')
        .map((event) => new ICAL.Event(event));
      expect(events).toHaveLength(visits.length);
      for (const [i, { id, day, window, title, place, text: told }] of visits.entries()) {
        const event = events[i] ?? expect.unreachable();
        const on = window?.day ?? day;
        expect(event.uid).toBe(`${id}-${on}@range.example`);
        expect(event.summary).toBe(title);
        expect((event.location as string | null) ?? '').toBe(place);
        expect((event.description as string | null) ?? '').toBe(told);
        expect(event.startDate.toString().slice(0, 10)).toBe(on);
        expect(event.startDate.isDate).toBe(window === undefined);
        if (!window) continue;
        // Floating: a wall clock's time, in no zone.
        expect(event.startDate.zone).toBe(ICAL.Timezone.localTimezone);
        expect(event.startDate.hour * 60 + event.startDate.minute).toBe(window.from);
        const end = window.to ?? window.from + 60;
        expect(event.endDate.hour * 60 + event.endDate.minute).toBe(end);
      }
    }),
  );
});

test.each([
  ['8-10', 480, 600],
  ['8:00 AM – 10:30 AM', 480, 630],
  ['1-3', 780, 900],
  ['1-3 pm', 780, 900],
  ['8-12pm', 480, 720],
  ['11-1pm', 660, 780],
  ['9am', 540, undefined],
  ['12-2', 720, 840],
  ['14:00', 840, undefined],
  ['06:30', 390, undefined],
  ['between 8 and 10', 480, 600],
])('%s begins at minute %i and ends at %s', (said, from, to) => {
  expect(windowOf(said)).toEqual({ from, ...(to === undefined ? {} : { to }) });
});

test('a date goes with its time, and words are no time', () => {
  expect(windowOf('2026-11-28 14:00-16:00')).toEqual({ day: '2026-11-28', from: 840, to: 960 });
  expect(windowOf('2026-11-28T08:00')).toEqual({ day: '2026-11-28', from: 480 });
  for (const said of ['', 'morning', '2026-11-28', '99', '25:00'])
    expect(windowOf(said)).toBeUndefined();
});

test('columns are known by our labels and by the headings of schedules', () => {
  const labels = jobLabels(staffWords());
  const known = knownColumns(
    ['Ticket', 'Time window', 'Customer', 'Phone', 'Street', 'Brand'],
    labels,
  );
  expect(callerIn(known, ['7', '8-10', 'Ann', '555-0107', '12 Long', 'X'])).toEqual({
    time: '8-10',
    name: 'Ann',
    phone: '555-0107',
    address: '12 Long',
    brand: 'X',
  });
  expect(callerIn(knownColumns(['Name', 'Name'], labels), ['a', 'b'])).toEqual({ name: 'a' });
});
