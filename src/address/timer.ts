import { NODE_NAME } from './grammar.ts';
import type { NodeId } from '../guide/types.ts';

/**
 * A count-down that was running when the address was written. Seconds since 1970-01-01 UTC by the
 * device's clock.
 */
export interface RunningTimer {
  /** The step it counts for. */
  readonly node: NodeId;
  /** When it ends if all time up to then is counted. */
  readonly end: number;
  /** Up to when its time is surely gone by, never past its end; an address of old does not say. */
  readonly counted?: number;
}

/** Seven digits in base 36 reach the year 4453. */
const TIME = /^[1-9a-z][0-9a-z]{0,6}$/;
/** Seconds by which an address may be ahead of the device's clock: time zones, and clocks set by hand. */
const AHEAD_MOST = 24 * 3600;

/** Read a fragment's `w`: `node.end.counted`, the times in base 36. Undefined for any other form. */
export function parseTimer(text = ''): RunningTimer | undefined {
  const [node = '', ...times] = text.split('.', 4);
  const [end, counted, more] = times.map((time) => (TIME.test(time) ? parseInt(time, 36) : 0));
  if (!NODE_NAME.test(node) || !end || counted === 0 || more !== undefined) return undefined;
  const at = { node: node as NodeId, end };
  return counted === undefined ? at : { ...at, counted: Math.min(counted, end) };
}

/** Writes what `parseTimer` reads; parts of seconds go to the long side. */
export function formatTimer({ node, end, counted }: RunningTimer): string {
  const last = Math.ceil(end);
  const times = counted === undefined ? [last] : [last, Math.min(Math.floor(counted), last)];
  return [node, ...times.map((time) => time.toString(36))].join('.');
}

/**
 * The wait that a timer of an address stands for, never shorter than the address can vouch for: one
 * that does not say what is counted has counted nothing, and no more is left than its whole length.
 * Undefined for another step's, and for one that is more than a day ahead of the clock: whoever meets
 * that starts the wait again.
 *
 * @param length seconds of the whole wait
 * @param now seconds since 1970-01-01 UTC by the device's clock
 */
export function waitOf(
  timer: RunningTimer | undefined,
  node: string,
  length: number,
  now: number,
): { readonly end: number; readonly counted: number } | undefined {
  if (timer?.node !== node) return undefined;
  const counted = Math.max(timer.end - length, timer.counted ?? 0);
  return counted > now + AHEAD_MOST ? undefined : { end: timer.end, counted };
}
