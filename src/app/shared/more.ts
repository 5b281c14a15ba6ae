import type { Words } from './words.ts';

/** About how many questions follow; '' where that cannot be said (`moreQuestions`). */
export function moreText(t: Words['t'], more: number | undefined): string {
  if (more === undefined) return '';
  return more === 0 ? t('site:page.last') : t('site:page.more', { count: more });
}
