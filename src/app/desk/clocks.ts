import { createSignal, onCleanup } from 'solid-js';
import type { DeskState } from './state.ts';

export type Clocks = ReturnType<typeof createClocks>;

/**
 * Milliseconds since 1970 as the page knows them: the device's clock when the page began, and from
 * there a clock that cannot be set (High Resolution Time, section 4). Where it stands still while
 * the device sleeps a wait gets longer, never shorter.
 */
export const pageTime = (): number => performance.timeOrigin + performance.now();

/** Milliseconds since 1970 by the clock on this wall, to the minute: `2026-11-28T14:05`. */
export const minuteOf = (time: number): string =>
  new Date(time - new Date(time).getTimezoneOffset() * 60_000).toISOString().slice(0, 16);

/** Time is always worked out from the clock, never counted: a throttled tab loses none. */
export function createClocks(desk: DeskState) {
  const [now, setNow] = createSignal(pageTime());
  const timer = setInterval(() => setNow(pageTime()), 1000);
  onCleanup(() => clearInterval(timer));
  const since = (from: number): number => Math.max(0, Math.floor((now() - from) / 1000));
  return {
    /** As `pageTime`, anew each second. */
    now,
    /** Seconds since the call began, and since the last answer was given. */
    call: () => since(desk.began),
    answered: () => since(desk.answered() ?? desk.began),
  };
}
