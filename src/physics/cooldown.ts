import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';

/** Minutes after a moment, from the soonest to the latest. */
export interface Window {
  readonly earliest: number;
  readonly latest: number;
}

/** One body that cools. Temperatures share one unit (°F or °C); `tau` is in minutes. */
export interface Cooling {
  readonly from: number;
  readonly room: number;
  readonly target: number;
  /** Time constant: the minutes in which the excess over the room falls to 1/e. */
  readonly tau: number;
}

export type CoolingProblem =
  | { readonly code: 'not-a-finite-number'; readonly field: string }
  | { readonly code: 'tau-not-positive'; readonly tau: number }
  /** A body that is no warmer than the room does not cool. */
  | { readonly code: 'start-not-above-room'; readonly from: number; readonly room: number }
  /** Newton cooling comes ever closer to the room's temperature but never reaches it. */
  | { readonly code: 'target-not-above-room'; readonly target: number; readonly room: number }
  /** The fast case is slower than the slow one. */
  | { readonly code: 'window-reversed'; readonly earliest: number; readonly latest: number };

/**
 * Newton's law of cooling, T(t) = room + (from − room)·e^(−t/tau), solved for t
 * (OpenStax Calculus Volume 1, section 6.8, with k = 1/tau).
 */
function minutes({ from, room, target, tau }: Cooling): number {
  return target >= from ? 0 : tau * Math.log((from - room) / (target - room));
}

function notFinite(values: Readonly<Record<string, number>>): CoolingProblem | undefined {
  const field = Object.keys(values).find((key) => !Number.isFinite(values[key]));
  return field === undefined ? undefined : { code: 'not-a-finite-number', field };
}

/**
 * Minutes until a body has cooled from `from` to `target`; 0 when it is there already.
 * Problems: a value that is not finite, `tau` ≤ 0, start or target not above the room.
 */
export function timeToReach(cooling: Cooling): Result<number, CoolingProblem> {
  const { from, room, target, tau } = cooling;
  const bad = notFinite({ from, room, target, tau });
  if (bad) return fail(bad);
  if (tau <= 0) return fail({ code: 'tau-not-positive', tau });
  if (from <= room) return fail({ code: 'start-not-above-room', from, room });
  if (target <= room) return fail({ code: 'target-not-above-room', target, room });
  return ok(minutes(cooling));
}

/** What differs between the fastest and the slowest oven one must reckon with. */
export type OvenCase = Pick<Cooling, 'target' | 'tau'>;

/**
 * The window in which an oven comes down to its unlock temperature: `fast` has a
 * short time constant and a high unlock temperature, `slow` the reverse. Minutes.
 * Problems: those of `timeToReach`, and a fast case slower than the slow one.
 */
export function coolingWindow(oven: {
  readonly from: number;
  readonly room: number;
  readonly fast: OvenCase;
  readonly slow: OvenCase;
}): Result<Window, CoolingProblem> {
  const { from, room, fast, slow } = oven;
  const earliest = timeToReach({ from, room, ...fast });
  if (!earliest.ok) return earliest;
  const latest = timeToReach({ from, room, ...slow });
  if (!latest.ok) return latest;
  if (earliest.value > latest.value)
    return fail({ code: 'window-reversed', earliest: earliest.value, latest: latest.value });
  return ok({ earliest: earliest.value, latest: latest.value });
}

/**
 * An oven after a self-clean, in °F and minutes.
 *
 * Origin of the figures. Commonly quoted, none of them a standard, and the
 * sources disagree: the clean runs at 750–1000 °F, the door unlocks somewhere
 * between 200 and 600 °F, and cooling takes 30–90 minutes, in some ovens several
 * hours. The clean temperature here is the middle of its range; the two unlock
 * temperatures are the ends of theirs; the room is an ordinary kitchen.
 *
 * The time constants are assumptions: fitted so that the window runs from about
 * 30 minutes (fast oven, high unlock) to about 4 hours (slow oven, low unlock).
 * With the excess over the room r = (875 − 70)/(target − 70):
 * fast 30/ln(805/530) = 71.8, slow 240/ln(805/130) = 131.6.
 */
export const cleanedOven = {
  from: 875,
  room: 70,
  fast: { target: 600, tau: 72 },
  slow: { target: 200, tau: 131 },
} as const;

/** Figures this uncertain are shown in steps of five minutes, widened outward. */
const STEP = 5;

/**
 * Cool enough to reach in: racks and glass below about 110 °F do not burn at a touch (a common
 * limit for surfaces touched for some seconds; from memory, no source).
 */
export const reachable = 110;

/** An oven after an ordinary bake, °F. */
const baked = 350;

function widened({ earliest, latest }: Window): Window {
  return { earliest: Math.floor(earliest / STEP) * STEP, latest: Math.ceil(latest / STEP) * STEP };
}

// The constants above are checked by the tests; this can only stop a build.
function sure<T>(result: Result<T, CoolingProblem>): T {
  if (!result.ok) throw new Error(result.error.code);
  return result.value;
}

/** Minutes from the end of heat to the door letting go: the wait page's count-down. */
export const cleanCooling: Window = widened(sure(coolingWindow(cleanedOven)));

const { room, fast, slow, from } = cleanedOven;
/** Minutes until an oven can be reached into: a fast one after a bake to a slow one after a clean. */
export const reachCooling: Window = widened({
  earliest: sure(timeToReach({ ...fast, room, from: baked, target: reachable })),
  latest: sure(timeToReach({ ...slow, room, from, target: reachable })),
});
