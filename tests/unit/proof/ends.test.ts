/** What an end may say and where "I am not sure" may lead, each shown by a journey that breaks it. */
import { describe, expect, it } from 'vitest';
import { tellFault } from '../../../src/content/proof-words.ts';
import { joinGuides } from '../../../src/guide/join.ts';
import { loadGuide, loadPart } from '../../../src/guide/load.ts';
import { prove } from '../../../src/proof/prove.ts';
import type { PropertyId } from '../../../src/proof/property.ts';
import type { Guide } from '../../../src/guide/types.ts';
import { brokenAlong } from '../guide/support/oracle.ts';
import { edited, smallSource } from '../guide/support/small.ts';
import { here, there } from '../guide/support/two-guides.ts';

function guideOf(source: string): Guide {
  const loaded = loadGuide(source, 'small.yaml');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

function verdictOf(guide: Guide, property: PropertyId) {
  const verdict = prove(guide).verdicts.find(({ id }) => id === property);
  if (!verdict) throw new Error(`no verdict on ${property}`);
  return verdict;
}

/** The faults of a property, its counter-example broken by the second opinion, too. */
function faultsOf(guide: Guide, property: PropertyId) {
  const { holds, faults, counterExample } = verdictOf(guide, property);
  expect(counterExample === undefined).toBe(holds);
  if (counterExample) expect(brokenAlong(guide, counterExample.journey)).toContain(property);
  for (const fault of faults) expect(tellFault(fault).what).not.toMatch(/undefined|object/);
  return faults;
}

const FINISH = 'done: { kind: finish, urgency: none';
const well = edited(FINISH, `${FINISH}, done: true`);

describe('a finish that says that the range is fine', () => {
  it.each(['error-seen', 'door-forced', 'breaker-tripped', 'trouble-seen'])(
    'is not reached where %s held, even if a later answer clears that',
    (fact) => {
      const guide = guideOf(
        well
          .replace('sets: [error-seen]', `sets: [${fact}]`)
          .replace('a: done, b: ask', 'a: later, b: later')
          .replace(
            '  ask:\n',
            `  later:\n    kind: question\n    answers:\n      unsure: { to: { a: done, b: ask }, clears: [${fact}] }\n  ask:\n`,
          ),
      );
      expect(faultsOf(guide, 'done-only-when-well')).toEqual([
        { code: 'done-despite', node: 'done', fact },
      ]);
    },
  );

  it('may be reached in all other journeys, and other finishes in any', () => {
    const without = well.replace('sets: [error-seen]', 'sets: [cooled]');
    expect(faultsOf(guideOf(without), 'done-only-when-well')).toEqual([]);
    expect(faultsOf(guideOf(smallSource), 'done-only-when-well')).toEqual([]);
    expect(verdictOf(guideOf(smallSource), 'done-only-when-well').journeysConcerned).toBe(0n);
    expect(verdictOf(guideOf(without), 'done-only-when-well').journeysConcerned).not.toBe(0n);
  });

  it('has nobody come', () => {
    const urgent = well
      .replace('sets: [error-seen]', 'sets: []')
      .replace('urgency: none, done', 'urgency: soon, done');
    expect(faultsOf(guideOf(urgent), 'done-only-when-well')).toEqual([
      { code: 'done-urgent', node: 'done' },
    ]);
  });

  it('is not reached in another guide after trouble in this one', () => {
    const parts = [
      here.replace('odd: { to: there/try }', 'odd: { to: there/try, sets: [trouble-seen] }'),
      there.replace('kind: finish, urgency: none', 'kind: finish, urgency: none, done: true'),
    ].map((text) => {
      const part = loadPart(text, 'graph.yaml');
      if (!part.ok) throw new Error(JSON.stringify(part.error));
      return part.value;
    });
    const joined = joinGuides(parts);
    const [first, second] = joined.ok ? joined.value : [];
    const fault = { code: 'done-despite', node: 'there/done', fact: 'trouble-seen' };
    expect(first && faultsOf(first, 'done-only-when-well')).toContainEqual(fault);
    const alone = second ? faultsOf(second, 'done-only-when-well') : [];
    expect(alone.map((one) => 'fact' in one && one.fact)).toEqual(['error-seen', 'door-forced']);
  });

  it('is the only end that can say so', () => {
    const loaded = loadGuide(edited('care: danger }', 'care: danger, done: true }'), 'small.yaml');
    expect(loaded.ok ? [] : loaded.error).toMatchObject([{ code: 'key-unknown', key: 'done' }]);
  });
});

describe('what staff and readers are told twice', () => {
  it('is asked at the start where a stop is for a danger, though others lead to it, too', () => {
    const guide = guideOf(
      edited('unsure: { to: done }\n  ask', 'unsure: { to: stop-gas }\n  ask') +
        '  stop-gas: { kind: stop, danger: gas, urgency: emergency, call: [emergency] }\n',
    );
    expect(verdictOf(guide, 'danger-first').faults).toContainEqual({
      code: 'danger-unasked',
      node: 'stop-gas',
      answer: 'gas',
    });
  });

  it('is noted as a fact where the flag has its name and the guide goes on', () => {
    const flagged = (sets: string): Guide =>
      guideOf(edited('track: b }', `track: b, sets: [${sets}], flag: error-seen }`));
    expect(faultsOf(flagged('cooled'), 'heat-only-when-safe')).toEqual([
      { code: 'flag-without-fact', node: 'look', answer: 'moved', flag: 'error-seen' },
    ]);
    expect(faultsOf(flagged('error-seen'), 'heat-only-when-safe')).toEqual([]);
  });
});

describe('"I am not sure"', () => {
  const stop = (urgency: string): string =>
    edited('unsure: { to: done }\n  stop', 'unsure: { to: stop-late }\n  stop') +
    `  stop-late: { kind: stop, urgency: ${urgency}, call: [emergency] }\n`;

  it.each(['today', 'emergency'])('does not lead to a stop that is for %s', (urgency) => {
    expect(faultsOf(guideOf(stop(urgency)), 'unsure-is-no-alarm')).toEqual([
      { code: 'unsure-alarms', node: 'ask-b', answer: 'unsure', to: 'stop-late' },
    ]);
  });

  it('may lead to a stop that can wait, and at the start to one that cannot', () => {
    expect(faultsOf(guideOf(stop('soon')), 'unsure-is-no-alarm')).toEqual([]);
    expect(faultsOf(guideOf(smallSource), 'unsure-is-no-alarm')).toEqual([]);
  });

  it('raises no flag', () => {
    const flagged = edited('unsure: { to: done }\n  ask', 'unsure: { to: done, flag: hum }\n  ask');
    expect(faultsOf(guideOf(flagged), 'unsure-is-no-alarm')).toEqual([
      { code: 'unsure-flags', node: 'look', answer: 'unsure', flag: 'hum' },
    ]);
  });
});
