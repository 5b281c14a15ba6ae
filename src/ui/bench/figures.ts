/** The bench's figures in words. No separators of thousands: the bench itself asks back at those. */
import { differenceInFahrenheit, toFahrenheit } from '../../physics/temperature.ts';
import type { ReadingProblem } from '../../physics/reading.ts';
import type { Words } from '../client/words.ts';
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

/** °C in both units, the one that is worked in first. */
export function temperature(words: Words, celsius: number, unit: Unit): string {
  const both = { F: number(words, toFahrenheit(celsius)), C: number(words, celsius) };
  const [first, second] = unit === 'F' ? (['F', 'C'] as const) : (['C', 'F'] as const);
  return words.t('both', {
    first: words.t(`degrees.${first}`, { value: both[first] }),
    second: words.t(`degrees.${second}`, { value: both[second] }),
  });
}

/** A difference in kelvins, likewise. */
export function difference(words: Words, kelvins: number, unit: Unit, sign = true): string {
  const fahrenheit = number(words, differenceInFahrenheit(kelvins), 1, sign);
  const both = { F: fahrenheit, C: number(words, kelvins, 1, sign) };
  const [first, second] = unit === 'F' ? (['F', 'C'] as const) : (['C', 'F'] as const);
  return words.t('both', {
    first: words.t(`degrees.${first}`, { value: both[first] }),
    second: words.t(`degrees.${second}`, { value: both[second] }),
  });
}

/** Why an entry cannot be used, and what to type. */
export function problemWords(words: Words, field: Field, problem: ReadingProblem): string {
  const facts: Record<string, string> = {};
  for (const [fact, value] of Object.entries(problem))
    facts[fact] = typeof value === 'number' ? number(words, value, 3) : String(value);
  const own = `problems.${field}.${problem.code}`;
  return words.t(words.has(own) ? own : `problems.${problem.code}`, facts);
}
