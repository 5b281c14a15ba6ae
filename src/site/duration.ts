import type { Words } from './words.ts';

/** A length of time in words: minutes below two hours, whole hours from there. */
export function duration(t: Words, minutes: number): string {
  return minutes < 120
    ? t('timer.minutes', { count: Math.round(minutes) })
    : t('timer.hours', { count: Math.round(minutes / 60) });
}
