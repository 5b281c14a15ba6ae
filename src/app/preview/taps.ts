/** What a technician's checks have shown so far, as text that a tab keeps. Pure. */
import { checkKey } from '../../diagnosis/evidence.ts';
import type { Evidence, Model } from '../../diagnosis/types.ts';

/** One check's result, by the model's names. */
export interface Tap {
  readonly check: string;
  readonly result: string;
}

/** A tap replaces what the same check showed before. */
export function withTap(taps: readonly Tap[], tap: Tap): readonly Tap[] {
  return [...without(taps, tap.check), tap];
}

export function without(taps: readonly Tap[], check: string): readonly Tap[] {
  return taps.filter((one) => one.check !== check);
}

/** Taps as evidence, in the order they were made. */
export function asEvidence(taps: readonly Tap[]): Evidence {
  return taps.map(({ check, result }) => ({ key: checkKey(check), answer: result }));
}

export function formatTaps(taps: readonly Tap[]): string {
  return taps.map(({ check, result }) => `${check}.${result}`).join('~');
}

/** Read them back; what the model does not know, and a second result of a check, is left out. */
export function parseTaps(text: string, model: Model): readonly Tap[] {
  const taps: Tap[] = [];
  // No more than there are checks can count, however long the text is.
  for (const pair of text.split('~', model.checks.length)) {
    const [check = '', result = ''] = pair.split('.');
    const known = model.checks.find(({ id }) => id === check);
    if (!known?.results.some(({ id }) => id === result)) continue;
    if (!taps.some((one) => one.check === check)) taps.push({ check, result });
  }
  return taps;
}
