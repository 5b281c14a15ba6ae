import { waitOf, type RunningTimer } from '../../address/timer.ts';
import { begin, gap, isSetBack, leaveOut } from '../../journey/wait.ts';

/**
 * A wait found in an address, where the device's clock claims time that no page has seen, or was set
 * back: that time is left out, and the wait ends later. Undefined where there is nothing to leave
 * out. One far ahead of the clock starts again. The desk does not ask, as the guide does: whoever is on the phone can hardly know.
 *
 * @param length seconds of the whole wait: no more can be left of it
 * @param now seconds since 1970-01-01 UTC by the device's clock
 */
export function withoutUnseen(
  timer: RunningTimer,
  length: number,
  now: number,
): RunningTimer | undefined {
  const { node } = timer;
  const wait = waitOf(timer, node, length, now);
  if (wait && gap(wait, now) === 0 && !isSetBack(wait, now)) return undefined;
  const later = wait ? leaveOut(wait, now) : begin(now, length);
  return { node, end: Math.ceil(later.end), counted: Math.floor(later.counted) };
}
