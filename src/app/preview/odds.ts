import type { Words } from '../shared/words.ts';

/** A share as odds; figures that are assumptions tell nothing nearer to none or all than these. */
export function odds(words: Words, share: number): string {
  const tenths = Math.round(10 * share);
  if (tenths < 1) return words.t('preview:odds.under');
  return tenths > 9 ? words.t('preview:odds.over') : words.t('preview:odds.about', { tenths });
}
