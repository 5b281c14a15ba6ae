import type { Words } from '../app/shared/words.ts';

/** A length of time in words: minutes below two hours, whole hours from there. */
export function duration(t: Words['t'], minutes: number): string {
  return minutes < 120
    ? t('site:timer.minutes', { count: Math.round(minutes) })
    : t('site:timer.hours', { count: Math.round(minutes / 60) });
}
