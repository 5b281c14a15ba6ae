/**
 * Keeps the screen on while a count-down runs (Screen Wake Lock, W3C): a page that sleeps
 * cannot count. Where the platform has no such lock or refuses, nothing is lost.
 */
let lock: WakeLockSentinel | undefined;
let asked = false;

/** Called again and again: takes the lock once a time in sight, gives it back when not wanted. */
export function keepAwake(wanted: boolean): void {
  if (!wanted) {
    asked = false;
    void lock?.release();
    lock = undefined;
  } else if (document.hidden) {
    // The platform has taken it back; it is asked for again once the page is in sight.
    asked = false;
  } else if (!asked) {
    asked = true;
    (navigator as { wakeLock?: WakeLock }).wakeLock?.request('screen').then(
      (given) => (lock = given),
      () => undefined,
    );
  }
}
