/**
 * What the answers of `door-locked` mean, told from its English sentences and not from
 * the guide's own account (`sets`, `clears`, `heat`, `action`, `danger`): a mutated guide
 * is judged by what really was answered. Keys are `text.answer` and text keys.
 */

import type { Made, Meaning, LastingFact } from '../../../mutants/meaning.ts';

/** Once answered, these stay true. */
const told: Readonly<Record<string, readonly LastingFact[]>> = {
  'still-cleaning.error': ['error'],
  'display.error': ['error'],
  'off-once.error': ['error'],
  'set-clock.error': ['error'],
  'listen.error': ['error'],
  'inside.food': ['inside'],
  'inside.foil': ['inside'],
  'inside.racks': ['inside'],
  'inside.unsure': ['inside'],
  'forced.yes': ['forced'],
  'forced.unsure': ['forced'],
  'opened.forced': ['forced'],
  // "Is the oven empty, and has no one forced the door?"
  'knob-empty.not-empty': ['inside'],
  'knob-empty.forced': ['inside', 'forced'],
  'knob-empty.unsure': ['inside', 'forced'],
  'panel.tripped': ['tripped'],
  'breaker-on.tripped': ['tripped'],
  // A part is seen not to work.
  'display.blank': ['trouble'],
  'off-once.dead': ['trouble'],
  'set-clock.dead': ['trouble'],
  'listen.hum-on': ['trouble'],
  'listen.blank': ['trouble'],
  'opened.bent': ['trouble'],
};

/** These hold from the answer on, until something says otherwise. */
const makes: Readonly<Record<string, readonly Made[]>> = {
  'inside.nothing': ['empty'],
  'forced.no': ['gentle'],
  'knob-empty.yes': ['empty', 'gentle'],
  'knob-empty.not-empty': ['gentle'],
  'since.overnight': ['cool'],
  'near.quiet': ['cool'],
  'wait.cool': ['cool'],
  'wait.overnight': ['cool'],
  'wait.opened': ['cool'],
  // Nothing got warm.
  'selector-set.quiet': ['cool'],
  'selector-set.light': ['cool'],
  'selector-set.not-in-manual': ['cool'],
  'panel.ready': ['panel'],
  'last-gate.all-true': ['stays'],
};

/** After these the breaker must be left off. */
const leaveOff = new Set(['panel.tripped', 'breaker-on.tripped']);
/** After these nobody touches the panel. */
const unfit = new Set(['breaker-off.bad', 'breaker-on.bad']);

const heats = new Set(['selector-set', 'short-clean']);
/** Of those, the one that starts a cycle. */
const startsCycle = new Set(['short-clean']);
const touchesDoor = new Set(['lever', 'try-door', 'try-again']);
const worksBreaker = new Set(['breaker-off', 'breaker-on']);
/** Pages that say that the range is fine. */
const saysFine = new Set(['finish-open']);
/** Pages that have an error copied. */
const copiesError = new Set(['error-write', 'error-after']);

/** Each danger and the page written for it. */
const ownStop: Readonly<Record<string, string>> = {
  fire: 'stop-fire',
  'pan-fire': 'stop-pan-fire',
  gas: 'stop-gas',
  ill: 'stop-co',
  sparks: 'stop-electric',
  runaway: 'stop-runaway',
  glass: 'stop-glass',
  burned: 'stop-burn',
  trapped: 'stop-trapped',
  unsure: 'stop-unsure',
};
/** The firm, not the emergency number, where nobody is hurt and the breaker can be turned off. */
const todayStops = ['stop-runaway', 'stop-glass'];
const emergencies = new Set(Object.values(ownStop).filter((stop) => !todayStops.includes(stop)));

export const doorLocked: Meaning = {
  start: 'danger',
  ...{ told, makes, leaveOff, unfit, emergencies, saysFine },
  ...{ heats, startsCycle, touchesDoor, worksBreaker, copiesError, ownStop },
};
