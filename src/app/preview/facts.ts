/** Figures of the diagnosis in words. */
import { band } from '../../diagnosis/band.ts';
import type { Words } from '../shared/words.ts';

/** Below and above these the figures, assumptions all, tell nothing apart. */
const [LOW, HIGH] = [0.01, 0.9];

/** A share that the figures make, as a percentage: never as none, all or near all of it. */
export function percent(words: Words, share: number): string {
  const format = (value: number) =>
    new Intl.NumberFormat(words.language, { style: 'percent' }).format(value);
  if (share < LOW) return words.t('preview:ranking.under', { share: format(LOW) });
  return share > HIGH ? words.t('preview:ranking.over', { share: format(HIGH) }) : format(share);
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
