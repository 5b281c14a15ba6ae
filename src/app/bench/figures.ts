/** The bench's figures in words. No separators of thousands: the bench itself asks back at those. */
import { differenceInFahrenheit, toFahrenheit } from '../../physics/temperature.ts';
import type { ReadingProblem } from '../../physics/reading.ts';
import type { Words } from '../shared/words.ts';
import type { Field, Unit } from './entries.ts';

export function number(words: Words, value: number, digits = 1, sign = false): string {
  return new Intl.NumberFormat(words.language, {
    maximumFractionDigits: digits,
    useGrouping: false,
    ...(sign ? { signDisplay: 'exceptZero' } : {}),
  }).format(value);
}

export function ohms(words: Words, value: number, sign = false): string {
  if (value === Infinity) return words.t('overload');
  return words.t('inOhms', { value: number(words, value, 1, sign) });
}

/** The unit that is worked in first. */
function inBoth(words: Words, unit: Unit, fahrenheit: string, celsius: string): string {
  const f = words.t('degrees.F', { value: fahrenheit });
  const c = words.t('degrees.C', { value: celsius });
  return words.t('both', unit === 'F' ? { first: f, second: c } : { first: c, second: f });
}

/** °C in both units, the one that is worked in first. */
export function temperature(words: Words, celsius: number, unit: Unit): string {
  return inBoth(words, unit, number(words, toFahrenheit(celsius)), number(words, celsius));
}

/** A difference in kelvins, likewise. */
export function difference(words: Words, kelvins: number, unit: Unit, sign = true): string {
  const fahrenheit = number(words, differenceInFahrenheit(kelvins), 1, sign);
  return inBoth(words, unit, fahrenheit, number(words, kelvins, 1, sign));
}

/** Why an entry cannot be used, and what to type. */
export function problemWords(words: Words, field: Field, problem: ReadingProblem): string {
  const facts: Record<string, string> = {};
  for (const [fact, value] of Object.entries(problem))
    facts[fact] = typeof value === 'number' ? number(words, value, 3) : String(value);
  const own = `problems.${field}.${problem.code}`;
  return words.t(words.has(own) ? own : `problems.${problem.code}`, facts);
}
