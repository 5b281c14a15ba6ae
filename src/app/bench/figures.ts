/** The bench's figures in words. No separators of thousands: the bench itself asks back at those. */
import { differenceInFahrenheit, toFahrenheit } from '../../physics/temperature.ts';
import type { Words } from '../shared/words.ts';
import type { Field, Unit } from './entries.ts';
import type { EntryProblem } from './judge.ts';
import type { Key } from '../shared/keys.ts';

export function number(words: Words, value: number, digits = 1, sign = false): string {
  return new Intl.NumberFormat(words.language, {
    maximumFractionDigits: digits,
    useGrouping: false,
    ...(sign ? { signDisplay: 'exceptZero' } : {}),
  }).format(value);
}

export function ohms(words: Words, value: number, sign = false): string {
  if (value === Infinity) return words.t('bench:overload');
  return words.t('bench:inOhms', { value: number(words, value, 1, sign) });
}

/** The unit that is worked in first. */
function inBoth(words: Words, unit: Unit, fahrenheit: string, celsius: string): string {
  const f = words.t('bench:degrees.F', { value: fahrenheit });
  const c = words.t('bench:degrees.C', { value: celsius });
  return words.t('bench:both', unit === 'F' ? { first: f, second: c } : { first: c, second: f });
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

/** Problems that are worded for one field alone. */
const OWN: Partial<Record<`${Field}.${EntryProblem['code']}`, Key>> = {
  'ohms.not-a-number': 'bench:problems.ohms.not-a-number',
  'ohms.too-large': 'bench:problems.ohms.too-large',
  'added.too-large': 'bench:problems.added.too-large',
};

/** Why an entry cannot be used, and what to type. */
export function problemWords(words: Words, field: Field, problem: EntryProblem): string {
  const facts: Record<string, string> = {};
  for (const [fact, value] of Object.entries(problem))
    facts[fact] = typeof value === 'number' ? number(words, value, 3) : String(value);
  return words.t(OWN[`${field}.${problem.code}`] ?? `bench:problems.${problem.code}`, facts);
}
