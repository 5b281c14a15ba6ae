/**
 * Described people whose range is dead or whose oven does not heat as it should. What should come
 * first, and after how many answers at most, is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { evidenceOf, observed } from '../../../src/diagnosis/evidence.ts';
import { posterior } from '../../../src/diagnosis/posterior.ts';
import { parseJourney } from '../../../src/address/journey-text.ts';
import { guides, models } from '../../../src/content/load.ts';
import { expectAtMost, expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

/** The breaker off and on once, at a panel that is fit and in reach. */
const reset = 'breaker-off.done breaker-on.stayed';
const dark = 'danger.none what.blank';
const cold = 'danger.none what.cold fuel.electric controls.fine settings.nothing';
const gas = 'danger.none what.cold fuel.gas-oven controls.fine settings.nothing';

const situations: readonly Situation[] = [
  {
    who: 'whole house dark in a storm, dinner for eight',
    way: `${dark} when.outage house-power.out`,
    end: 'stop-no-power',
    urgency: 'soon',
  },
  {
    who: 'old farm house: half of the rooms dark',
    way: `${dark} when.outage house-power.part`,
    end: 'stop-half-power',
    urgency: 'today',
    fault: 'house-supply',
  },
  {
    who: 'gas range in an apartment, the toaster tripped the kitchen outlet',
    way: `${dark} when.itself house-power.outlets gfci.back`,
    end: 'finish-watch',
    urgency: 'none',
    fault: 'house-supply',
  },
  {
    who: 'the kitchen outlet will not stay in',
    way: `${dark} when.itself house-power.outlets gfci.again`,
    end: 'stop-tripped-outlet',
    urgency: 'today',
  },
  {
    who: 'range dead since the Thanksgiving roast, no hand held to a door: the breaker had tripped',
    way: `${dark} when.cooking house-power.yes panel.ready breaker-look.middle ${reset} after-reset.normal`,
    end: 'finish-watch',
    urgency: 'none',
    fault: 'breaker-tripped',
  },
  {
    who: 'wall oven, dead in the self-clean this morning, comes back once it is cool',
    way: `${dark} when.clean-today wait.back`,
    end: 'finish-cooled',
    urgency: 'soon',
    fault: 'cut-out',
    check: 'cut-out',
    details: { kind: 'wall' },
  },
  {
    who: 'dead in the self-clean an hour ago, still warm: looks again tomorrow, no breaker',
    way: `${dark} when.clean-today wait.less`,
    end: 'finish-overnight',
    urgency: 'none',
  },
  {
    who: 'numb hands, cannot tell if it is cool: tomorrow, no alarm',
    way: `${dark} when.clean-today wait.unsure`,
    end: 'finish-overnight',
    urgency: 'none',
  },
  {
    who: 'dead display and as hot as ever five hours after the self-clean',
    way: `${dark} when.clean-today wait.no-less`,
    end: 'stop-still-hot',
    urgency: 'today',
  },
  {
    who: 'parent of small children: dead since the self-clean, blank after one reset, light works',
    way: `${dark} when.clean-today wait.overnight house-power.yes panel.ready breaker-look.on ${reset} after-reset.blank`,
    end: 'stop-dead',
    urgency: 'soon',
    fault: 'cut-out',
    check: 'cut-out',
    details: { lamp: 'works', kind: 'wall' },
  },
  {
    who: 'neighbor had reset it already: the oven light is asked, then booked',
    way: `${dark} when.itself house-power.yes panel.reset-before lamp.dark`,
    end: 'stop-dead',
    urgency: 'soon',
  },
  {
    who: 'the breaker trips with every bake: it is not closed again',
    way: 'danger.none what.trips trips.again',
    end: 'stop-tripped',
    urgency: 'today',
  },
  {
    who: 'it tripped once in a storm: one try, and it trips',
    way: `danger.none what.trips trips.once when.outage house-power.yes panel.ready breaker-look.middle breaker-off.done breaker-on.tripped`,
    end: 'stop-tripped',
    urgency: 'today',
    fault: 'breaker-tripped',
  },
  {
    who: 'not sure about the breaker: left the way it is',
    way: 'danger.none what.trips trips.unsure',
    end: 'stop-book-off',
    urgency: 'soon',
  },
  {
    who: 'grandmother whose grandson set a delayed bake',
    way: 'danger.none what.cold fuel.electric controls.fine settings.was-set',
    end: 'finish-setting',
    urgency: 'none',
    fault: 'setting',
    check: 'controls-look',
  },
  {
    who: 'first night in a rental: two knobs, one not at Bake',
    way: 'danger.none what.cold fuel.unsure controls.knob',
    end: 'finish-setting',
    urgency: 'none',
    fault: 'setting',
  },
  {
    who: 'wiped the panel, a padlock shows',
    way: 'danger.none what.cold fuel.gas-oven controls.lock control-lock.went-off',
    end: 'finish-lock',
    urgency: 'none',
    fault: 'control-lock',
  },
  {
    who: 'cold since last week’s self-clean, a lock sign that no button takes away, element whole',
    way: 'danger.none what.cold fuel.electric controls.lock control-lock.no-change settings.nothing when.clean element-look.fine panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'latch-not-home',
    check: 'latch-look',
  },
  {
    who: 'church kitchen: a blister on the element',
    way: `${cold} when.cooking cool-enough.overnight element-look.marked`,
    end: 'stop-part',
    urgency: 'today',
    fault: 'bake-element',
    check: 'bake-element',
  },
  {
    who: 'electric oven cold, nothing to see: one reset, tried at the next meal',
    way: `${cold} when.itself element-look.none-seen panel.ready ${reset} after-reset.normal`,
    end: 'finish-try',
    urgency: 'soon',
    fault: 'bake-element',
  },
  {
    who: 'an hour to preheat, burners weak too',
    way: 'danger.none what.weak fuel.electric preheat.slow when.clean element-look.fine panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'supply-leg',
    check: 'breaker-set',
    details: { burners: 'some' },
  },
  {
    who: 'new baker: fifteen minutes to preheat seem long',
    way: 'danger.none what.weak fuel.electric preheat.usual',
    end: 'finish-preheat',
    urgency: 'none',
  },
  {
    who: 'cookies raw below: only the top heats',
    way: 'danger.none what.weak fuel.dual preheat.top-only when.itself element-look.fine panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'bake-element',
    check: 'bake-element',
  },
  {
    who: 'widower: the broiler does not work, it bakes',
    way: 'danger.none what.broil fuel.electric when.itself element-look.fine',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'broil-element',
    check: 'broil-element',
  },
  {
    who: 'tenant with a gas oven that glows and does not light',
    way: `${gas} gas-else.yes oven-flame.no-flame when.itself`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'igniter',
    check: 'igniter-current',
  },
  {
    who: 'gas oven lights late with a puff: stopped, never "bake as usual"',
    way: 'danger.none what.weak fuel.gas-oven oven-flame.late',
    end: 'stop-late',
    urgency: 'today',
    fault: 'igniter',
  },
  {
    who: 'gas oven, cold, then a late whoosh remembered',
    way: `${gas} gas-else.yes oven-flame.late`,
    end: 'stop-late',
    urgency: 'today',
  },
  {
    who: 'gas broiler burns yellow and leaves soot',
    way: 'danger.none what.broil fuel.gas-oven oven-flame.yellow',
    end: 'stop-flame',
    urgency: 'today',
    fault: 'gas-burner',
  },
  {
    who: 'meter shut off by the gas company: no burner lights either',
    way: `${gas} gas-else.dead`,
    end: 'stop-gas-supply',
    urgency: 'today',
    fault: 'gas-shut',
    check: 'controls-look',
  },
  {
    who: 'it shows letters: over to the guide for errors, Off clears them',
    way: 'danger.none what.error error-shows/error-write.written error-shows/off-once.changed error-shows/now.gone',
    end: 'error-shows/finish-watch',
    urgency: 'none',
  },
  {
    who: 'cold and the door is locked too',
    way: 'danger.none what.stuck door-locked/wait.less',
    end: 'door-locked/finish-overnight',
    urgency: 'none',
  },
];

describe('a described person with a dead range or an oven that does not heat', () => {
  it.each(situations)('$who', expectWalked('no-heat'));
});

describe('answers it takes', () => {
  it.each([
    ['to be told to wait', 3, `${dark} when.clean-today`, 'wait'],
    [
      'to clear the control lock',
      5,
      'danger.none what.cold fuel.electric controls.lock control-lock.went-off',
      'finish-lock',
    ],
    [
      'to find a tripped breaker',
      9,
      `${dark} when.itself house-power.yes panel.ready breaker-look.middle ${reset} after-reset.normal`,
      'finish-watch',
    ],
    [
      'to have a cold electric oven reset',
      12,
      `${cold} when.itself element-look.fine panel.ready ${reset} after-reset.normal`,
      'finish-try',
    ],
    [
      'to have a cold gas oven reset',
      12,
      `${gas} gas-else.yes oven-flame.not-seen when.itself panel.ready ${reset} after-reset.normal`,
      'finish-try',
    ],
    ['to be told to book', 9, `${cold} when.itself element-look.fine panel.cannot`, 'stop-book'],
  ])('%s: %i at most', expectAtMost('no-heat'));
});

describe('a dark range', () => {
  const guide = guides().find(({ id }) => String(id) === 'no-heat');
  if (!guide) throw new Error('no no-heat');

  it('is asked for no wait and no hand near the door, but after a self-clean today', () => {
    const seen = new Set<string>(['when-dark']);
    for (const id of seen)
      for (const { id: answer, to } of guide.nodes.get(id as never)?.answers ?? [])
        if (`${id}.${answer}` !== 'when-dark.clean-today') seen.add(to);
    expect(seen).toContain('breaker-off-dark');
    for (const id of seen) expect(guide.nodes.get(id as never)?.action, id).not.toBe('wait');
    expect([...seen].filter((id) => /cool-enough|wait|near/.test(id))).toEqual([]);
  });
});

describe('the ranking', () => {
  const share = (way: string, fault: string, details = {}) => {
    const guide = guides().find(({ id }) => String(id) === 'no-heat');
    const model = models()['no-heat'];
    if (!guide || !model) throw new Error('no no-heat');
    const journey = parseJourney(way.split(' ').join('~'));
    const course = { first: guide.id, last: guide.id };
    const seen = observed(model, course, evidenceOf(guide, journey, details));
    return posterior(model, seen).find((one) => String(one.fault) === fault)?.share ?? 0;
  };

  it('gives the igniter the most of cold gas ovens, the element the most of cold electric ones', () => {
    expect(share('danger.none what.cold fuel.gas-oven', 'igniter')).toBeGreaterThan(0.7);
    expect(share('danger.none what.cold fuel.electric', 'bake-element')).toBeGreaterThan(0.3);
  });

  it('takes few cold ovens for an open cutoff, unless a self-clean ran', () => {
    expect(share('danger.none what.cold fuel.electric', 'cut-out')).toBeLessThan(0.15);
    expect(share('danger.none what.blank when-dark.clean-today', 'cut-out')).toBeGreaterThan(0.4);
  });
});
