import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';

export type ReadingProblem =
  | { readonly code: 'empty' }
  /** Longer than any meter shows: most likely a slip of the clipboard. */
  | { readonly code: 'too-long'; readonly length: number; readonly max: number }
  /** Letters, units, two signs, thousands separators, exponents… */
  | { readonly code: 'not-a-number'; readonly entry: string }
  /** `1,091`: a decimal comma or a thousands separator? Both readings are given. */
  | { readonly code: 'ambiguous-comma'; readonly decimal: number; readonly thousands: number }
  | { readonly code: 'negative'; readonly value: number }
  | { readonly code: 'too-small'; readonly value: number; readonly min: number }
  | { readonly code: 'too-large'; readonly value: number; readonly max: number };

const MAX_LENGTH = 20;
const NUMBER = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
/** One to three digits (not a lone 0), a comma, exactly three digits. */
const AMBIGUOUS = /^[+-]?[1-9]\d{0,2},\d{3}$/;

/**
 * Read a number as a person types it off a meter. Forgiven, and nothing else:
 * spaces around it, a decimal comma, a typographic minus sign. A comma that may as
 * well separate thousands is asked back, not guessed. Both limits are inclusive.
 */
export function parseReading(
  entry: string,
  limits: { readonly min: number; readonly max: number },
): Result<number, ReadingProblem> {
  const text = entry.trim().replace(/^\u2212/, '-');
  if (text === '') return fail({ code: 'empty' });
  if (text.length > MAX_LENGTH)
    return fail({ code: 'too-long', length: text.length, max: MAX_LENGTH });
  if (!NUMBER.test(text)) return fail({ code: 'not-a-number', entry: text });
  const value = Number(text.replace(',', '.'));
  if (AMBIGUOUS.test(text)) {
    const thousands = Number(text.replace(',', ''));
    return fail({ code: 'ambiguous-comma', decimal: value, thousands });
  }
  const { min, max } = limits;
  if (value < 0 && min >= 0) return fail({ code: 'negative', value });
  if (value < min) return fail({ code: 'too-small', value, min });
  if (value > max) return fail({ code: 'too-large', value, max });
  return ok(value === 0 ? 0 : value);
}

/** What a meter's display shows when nothing conducts: over its highest range. */
const OVERLOAD = /^(?:[o0]\.?l\.?|∞)$/i;

/**
 * Read a resistance in Ω: `parseReading` from 0 to `max`, and the meter's overload
 * sign (`OL`, `0L`, `O.L`, `∞`) as Infinity, which is what an open sensor shows.
 */
export function parseResistance(entry: string, max: number): Result<number, ReadingProblem> {
  return OVERLOAD.test(entry.trim()) ? ok(Infinity) : parseReading(entry, { min: 0, max });
}
