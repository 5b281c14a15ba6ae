/** Arithmetic of the count-downs, for the guide's pages and the desk. */

/** Minutes since the heat stopped that each answer stands for at least: the wait is never told too short. */
const since: Record<string, number> = {
  'since.under-1': 0,
  'since.1-to-4': 60,
  'since.over-4': 240,
};
/** However long ago the heat stopped, an oven that still feels hot gets this long. */
const LEAST_MINUTES = 15;

/**
 * Minutes until the latest end of a wait that starts now.
 *
 * @param journey as in a fragment's `j=`
 */
export function waitMinutes(kind: string, latest: number, journey: string): number {
  const passed = Object.keys(since).find((answer) => journey.includes(answer));
  // After a second heating the earlier answer no longer tells.
  const gone =
    kind === 'cooling' && !journey.includes('short-clean') ? (since[passed ?? ''] ?? 0) : 0;
  return Math.max(latest - gone, Math.min(latest, LEAST_MINUTES));
}

/** Seconds as `m:ss` or `h:mm:ss`; below zero as zero. */
export function clock(seconds: number): string {
  const left = Math.max(0, Math.ceil(seconds));
  const [h, m, s] = [Math.floor(left / 3600), Math.floor(left / 60) % 60, left % 60];
  const two = (n: number): string => String(n).padStart(2, '0');
  return h > 0 ? `${String(h)}:${two(m)}:${two(s)}` : `${String(m)}:${two(s)}`;
}
