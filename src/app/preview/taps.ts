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

/** Taps as evidence for a model that has their checks, in the order they were made. */
export function asEvidence(taps: readonly Tap[], { checks }: Model): Evidence {
  return taps
    .filter(({ check }) => checks.some(({ id }) => id === check))
    .map(({ check, result }) => ({ key: checkKey(check), answer: result }));
}

export function formatTaps(taps: readonly Tap[]): string {
  return taps.map(({ check, result }) => `${check}.${result}`).join('~');
}

/** Read them back; what no model knows, and a second result of a check, is left out. */
export function parseTaps(text: string, models: readonly Model[]): readonly Tap[] {
  const taps: Tap[] = [];
  const checks = models.flatMap((model) => model.checks);
  // No more than there are checks can count, however long the text is.
  for (const pair of text.split('~', checks.length)) {
    const [check = '', result = ''] = pair.split('.');
    const known = checks.find(({ id }) => id === check);
    if (!known?.results.some(({ id }) => id === result)) continue;
    if (!taps.some((one) => one.check === check)) taps.push({ check, result });
  }
  return taps;
}
