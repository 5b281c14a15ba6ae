import type { RunningTimer } from '../../address/fragment.ts';
import { gap, isSetBack, leaveOut, type Wait } from '../../journey/wait.ts';

/**
 * A wait found in an address, where the device's clock claims time that no page has seen, or was set
 * back: that time is left out, and the wait ends later. Undefined where there is nothing to leave
 * out. The desk does not ask, as the guide does: whoever is on the phone can hardly know.
 *
 * @param length seconds of the whole wait: no more can be left of it
 * @param now seconds since 1970-01-01 UTC by the device's clock
 */
export function withoutUnseen(
  { node, end, counted = 0 }: RunningTimer,
  length: number,
  now: number,
): RunningTimer | undefined {
  const wait: Wait = { end, counted: Math.max(end - length, counted) };
  if (gap(wait, now) === 0 && !isSetBack(wait, now)) return undefined;
  const later = leaveOut(wait, now);
  return { node, end: Math.ceil(later.end), counted: Math.floor(later.counted) };
}
