/**
 * The day a note was made, as far as 5 bits tell it: days since 1970-01-01 UTC,
 * mod 32. A note is read within days, so the latest fitting day is the likely one.
 */
const dayMilliseconds = 86_400_000;

/** Days there are numbers for. */
export const dayRadix = 32;

/** Day number, 0 to 31, of a date's UTC day. */
export function dayOf(date: Date): number {
  const days = Math.floor(date.getTime() / dayMilliseconds);
  return ((days % dayRadix) + dayRadix) % dayRadix;
}

/** The two latest days a day number can mean, both midnight UTC. */
export interface MadeOn {
  readonly latest: Date;
  /** 32 days before `latest`. */
  readonly earlier: Date;
}

/**
 * When a note with this day number was made, seen from `today`. Tomorrow counts as
 * possible: the writer's clock may be in a time zone ahead, or a little wrong.
 */
export function madeOn(day: number, today: Date): MadeOn {
  const tomorrow = Math.floor(today.getTime() / dayMilliseconds) + 1;
  const back = (((tomorrow - day) % dayRadix) + dayRadix) % dayRadix;
  const latest = (tomorrow - back) * dayMilliseconds;
  return {
    latest: new Date(latest),
    earlier: new Date(latest - dayRadix * dayMilliseconds),
  };
}

/** The latest day that a day number can mean, ISO 8601. */
export const latestDay = (day: number, today: Date): string =>
  madeOn(day, today).latest.toISOString().slice(0, 10);
