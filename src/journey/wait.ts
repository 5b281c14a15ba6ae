/**
 * How long a wait is, and how much of it has surely gone by. A page's monotonic clock (High Resolution Time,
 * section 4) is not moved when the device's clock is set, but on most systems it stands still
 * while the device sleeps, and it is gone with the page. So what it has seen is counted, and time
 * nobody was there to see (the page closed, the phone locked) as far as it is no more than the
 * slowest wait: people come back to check, and the page's own question follows. Any other time
 * the device's clock claims is a gap, counted when the reader says that it really passed.
 *
 * All figures but a wait's length are seconds; those of a clock are since 1970-01-01 UTC by the
 * device's clock.
 */
import type { Timer } from '../guide/types.ts';

/** However long ago the heat stopped, an oven that still feels hot gets this long. */
const LEAST_MINUTES = 15;

/**
 * Minutes until the latest end of a wait that starts now, never too short: an oven's cooling began
 * when its heat stopped, any other wait begins now.
 *
 * @param ended minutes since the heat stopped, at least, where the journey tells (`heatEnded`)
 */
export function waitMinutes(
  { kind, minutes: [, latest] }: Timer,
  ended: number | undefined,
): number {
  const gone = kind === 'cooling' ? (ended ?? 0) : 0;
  return Math.max(latest - gone, Math.min(latest, LEAST_MINUTES));
}

/** Seconds as `m:ss` or `h:mm:ss`; below zero as zero. */
export function clock(seconds: number): string {
  const whole = Math.max(0, Math.ceil(seconds));
  const [h, m, s] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (n: number): string => String(n).padStart(2, '0');
  return h > 0 ? `${String(h)}:${two(m)}:${two(s)}` : `${String(m)}:${two(s)}`;
}

export interface Wait {
  /** When the wait ends if every gap is counted. */
  readonly end: number;
  /** Up to when time is counted. */
  readonly counted: number;
}

/** Gaps shorter than this are neither asked about nor counted. */
const GAP = 60;

export const begin = (now: number, length: number): Wait => ({ end: now + length, counted: now });

export const left = ({ end, counted }: Wait): number => end - counted;

/** Time the device's clock claims and nobody has seen, where it is worth a question; else 0. */
export function gap(wait: Wait, now: number): number {
  const unseen = now - wait.counted;
  return unseen >= GAP && left(wait) > 0 ? unseen : 0;
}

/** The reader says that the gap really passed. */
export const count = ({ end }: Wait, now: number): Wait => ({ end, counted: now });

/** Of a page that was closed or out of sight: a gap of up to `most` is counted at once. */
export function countAbsence(wait: Wait, now: number, most: number): Wait {
  const unseen = gap(wait, now);
  return unseen > 0 && unseen <= most ? count(wait, now) : wait;
}

/** The gap is not counted: the wait ends that much later. */
export const leaveOut = (wait: Wait, now: number): Wait => begin(now, left(wait));

/** Was the clock set back behind what is counted? */
export const isSetBack = ({ counted }: Wait, now: number): boolean => now - counted <= -GAP;

/** Time the page has seen pass. */
export const pass = ({ end, counted }: Wait, seen: number): Wait => ({
  end,
  counted: counted + seen,
});
