/** Figures of the diagnosis in words. */
import { band } from '../../diagnosis/band.ts';
import type { Words } from '../shared/words.ts';

/** Shares nearer to none or all than this are not told apart from it by our figures. */
const EDGE = 0.001;

/** A share as a percentage, never as none or all of it. */
export function percent(words: Words, share: number): string {
  const tenths = share < 0.01 || share > 0.99 ? 1 : 0;
  const format = (value: number) =>
    new Intl.NumberFormat(words.language, {
      style: 'percent',
      maximumFractionDigits: tenths,
    }).format(value);
  if (share < EDGE) return words.t('preview:ranking.under', { share: format(EDGE) });
  return share > 1 - EDGE
    ? words.t('preview:ranking.over', { share: format(1 - EDGE) })
    : format(share);
}

/** A share as odds; figures that are assumptions tell nothing nearer to none or all than these. */
export function odds(words: Words, share: number): string {
  const tenths = Math.round(10 * share);
  if (tenths < 1) return words.t('preview:odds.under');
  return tenths > 9 ? words.t('preview:odds.over') : words.t('preview:odds.about', { tenths });
}

export function shareWords(words: Words, share: number): string {
  return words.t('preview:ranking.share', {
    share: percent(words, share),
    band: words.t(`diagnosis:bands.${band(share)}`),
  });
}

export function minutes(words: Words, count: number): string {
  return words.t('preview:plan.minutes', { count: Math.round(count) });
}
