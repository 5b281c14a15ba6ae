/** A route as a calendar file, iCalendar (RFC 5545), written by ical-generator. */
import ical from 'ical-generator';
import type { Window } from './known.ts';

export interface CalendarVisit {
  /** The same for the same visit, so that a second file replaces what the first brought. */
  readonly id: string;
  /** ISO 8601 date. */
  readonly day: string;
  /** Without one the visit stands at the head of its day. */
  readonly window: Window | undefined;
  readonly title: string;
  readonly place: string;
  readonly text: string;
}

/** Minutes of a visit that says when it begins only. Our own choice. */
const USUAL = 60;
const DAY = 24 * 60;
const at = (day: string, minutes: number): Date =>
  new Date(Date.parse(`${day}T00:00:00Z`) + minutes * 60_000);

/**
 * The text of a calendar file. Times are floating (RFC 5545, section 3.3.5): those of the wall clock
 * wherever it is opened, as the route has them.
 * @param host the domain that makes the ids the firm's own; @param now when the file is made
 */
export function calendarOf(
  name: string,
  host: string,
  visits: readonly CalendarVisit[],
  now: Date,
): string {
  const calendar = ical({ name, prodId: { company: host, product: 'route' } });
  for (const { id, day, window, title, place, text } of visits) {
    const on = window?.day ?? day;
    calendar.createEvent({
      id: `${id}-${on}@${host}`,
      stamp: now,
      ...(window
        ? {
            start: at(on, window.from),
            end: at(on, Math.max(window.to ?? window.from + USUAL, window.from + 1)),
            floating: true,
          }
        : { start: at(on, 0), end: at(on, DAY), allDay: true }),
      summary: title,
      location: place,
      description: text,
    });
  }
  return calendar.toString();
}
