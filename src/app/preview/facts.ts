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

export function shareWords(words: Words, share: number): string {
  return words.t('preview:ranking.share', {
    share: percent(words, share),
    band: words.t(`diagnosis:bands.${band(share)}`),
  });
}

/** An amount of the firm's money, in whole units of it. */
export function money(words: Words, amount: number, currency: string): string {
  return new Intl.NumberFormat(words.language, {
    ...{ style: 'currency', currency },
    ...{ minimumFractionDigits: 0, maximumFractionDigits: 0 },
  }).format(amount);
}

export function minutes(words: Words, count: number): string {
  return words.t('preview:plan.minutes', { count: Math.round(count) });
}
