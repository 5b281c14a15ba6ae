/** A day's visits on one line of time. */
import type { Window } from './known.ts';

/** Minutes from midnight. */
export interface Block {
  /** The visit's place in the day, from 1. */
  readonly place: number;
  readonly from: number;
  /** When it is expected to be over, and when it is so nine times in ten. */
  readonly to: number;
  readonly cautious: number;
  readonly window: Window | undefined;
  /** It begins only after its window has ended. */
  readonly late: boolean;
}

/** A visit of the day as the bar takes it; minutes undefined where nobody counts them. */
export interface Timed {
  readonly window: Window | undefined;
  readonly expected?: number | undefined;
  readonly cautious?: number | undefined;
}

/** A day begins then where no window says when, 8:00; common practice. */
const MORNING = 8 * 60;
/** What a visit without figures takes up, so that it is seen: no estimate. */
const UNKNOWN = 15;

/**
 * The visits one after another as they are listed, none before its window opens. Driving and
 * repairs are not in it: what is late here is late for certain.
 */
export function dayBar(visits: readonly Timed[]): readonly Block[] {
  let now = Math.min(...visits.map(({ window }) => window?.from ?? Infinity));
  if (!Number.isFinite(now)) now = MORNING;
  return visits.map(({ window, expected = UNKNOWN, cautious = expected }, index) => {
    const from = Math.max(now, window?.from ?? now);
    now = from + expected;
    const late = window?.to !== undefined && from >= window.to;
    return { place: index + 1, from, to: now, cautious: from + cautious, window, late };
  });
}
