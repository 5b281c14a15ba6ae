/**
 * What the answers of `door-locked` mean, told from its English sentences and not from
 * the guide's own account (`sets`, `clears`, `heat`, `action`, `danger`): a mutated guide
 * is judged by what really was answered. Keys are `text.answer` and text keys.
 */

import type { Made, Meaning, LastingFact } from '../../../mutants/meaning.ts';

/** Once answered, these stay true. */
const told: Readonly<Record<string, LastingFact>> = {
  'display.error': 'error',
  'still-cleaning.error': 'error',
  'set-clock.error': 'error',
  'inside.food': 'inside',
  'inside.foil': 'inside',
  'inside.racks': 'inside',
  'inside.unsure': 'inside',
  'forced.yes': 'forced',
  'forced.unsure': 'forced',
  'breaker-on.tripped': 'tripped',
};

/** These hold from the answer on, until something says otherwise. */
const makes: Readonly<Record<string, Made>> = {
  'inside.nothing': 'empty',
  'forced.no': 'gentle',
  'near.cool': 'cool',
  'wait.cool': 'cool',
  'wait.opened': 'cool',
  'cool-again.cool': 'cool',
  // "It stays dark, quiet and cool."
  'selector-set.quiet': 'cool',
  'panel.ready': 'panel',
  'last-gate.all-true': 'stays',
};

/** After these the breaker must be left off. */
const leaveOff = new Set(['breaker-on.tripped', 'breaker-on.bad', 'breaker-off.bad']);

const heats = new Set(['selector-set', 'short-clean']);
/** Of those, the one that starts a cycle. */
const startsCycle = new Set(['short-clean']);
const touchesDoor = new Set(['lever', 'try-door', 'try-again']);
const worksBreaker = new Set(['breaker-off', 'breaker-on']);
/** Pages that say that the range is fine. */
const saysFine = new Set<string>();
/** Pages that have an error copied. */
const copiesError = new Set(['error-write']);

/** Each danger and the page written for it. */
const ownStop: Readonly<Record<string, string>> = {
  fire: 'stop-fire',
  gas: 'stop-gas',
  ill: 'stop-co',
  sparks: 'stop-electric',
  glass: 'stop-glass',
  burned: 'stop-burn',
  trapped: 'stop-trapped',
  unsure: 'stop-unsure',
};

function single<T>(record: Readonly<Record<string, T>>): Record<string, readonly T[]> {
  return Object.fromEntries(Object.entries(record).map(([key, one]) => [key, [one]]));
}

export const doorLocked: Meaning = {
  start: 'danger',
  told: single(told),
  makes: single(makes),
  ...{ leaveOff, heats, startsCycle, touchesDoor, worksBreaker, copiesError, saysFine, ownStop },
};
