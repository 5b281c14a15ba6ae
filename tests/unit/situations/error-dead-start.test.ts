/**
 * Described people walked through the published guides: answers in, expected end and what
 * the technician sees first out. What should come first is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

/** Power off and on once, at a panel that is fit and in reach. */
const reset = 'panel.ready controls-off.done breaker-off.done breaker-on.stayed';

const situations: readonly Situation[] = [
  {
    who: 'landlord far away, tenant on the phone: the tenant may not use the panel, error while baking',
    guide: 'error-shows',
    way: 'danger.none what.both error-write.written door-stuck.no oven-on.on turn-off.done when.baking often.always shuts.yes off-key.back keys-look.fine manual.no-manual panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'sensor',
    check: 'sensor-at-plug',
  },
  {
    who: 'wheelchair user who cannot reach the panel: a key that does nothing, worn keys',
    guide: 'error-shows',
    way: 'danger.none what.both error-write.written door-stuck.no oven-on.off when.pressing often.on-off shuts.yes off-key.dead keys-look.worn manual.not-there panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'keypad',
    check: 'keypad',
  },
  {
    who: 'hard of hearing, a neighbour hears it: it is the alarm on the wall, three beeps in a row',
    guide: 'error-shows',
    way: 'danger.none what.beeps beep-source.alarm alarm-kind.loud',
    end: 'stop-alarm',
    urgency: 'emergency',
  },
  {
    who: 'first flat of their own: the range beeps since the rice is done',
    guide: 'error-shows',
    way: 'danger.none what.beeps beep-source.range timer-off.stopped',
    end: 'finish-timer',
    urgency: 'none',
    fault: 'timer-ran-out',
    check: 'controls-look',
  },
  {
    who: 'back from a trip after a storm: error, gone with the reset',
    guide: 'error-shows',
    way: `danger.none what.error error-write.written door-stuck.no oven-on.off when.outage often.first shuts.yes off-key.stays keys-look.fine manual.not-there ${reset} after-reset.clear set-clock.done watch.clear`,
    end: 'finish-watch',
    urgency: 'soon',
    fault: 'control-hung',
    check: 'reset',
    details: { storm: 'yes' },
  },
  {
    who: 'family with pasta water boiled over the keys, waited over night',
    guide: 'error-shows',
    way: 'danger.none what.both error-write.written door-stuck.no oven-on.off when.pressing often.first shuts.yes off-key.back keys-look.wet dry-keys.cleared',
    end: 'finish-dry',
    urgency: 'none',
    fault: 'keys-wet',
    check: 'keys-feel',
  },
  {
    who: 'retired engineer: error in the clean, comes back at once after one reset',
    guide: 'error-shows',
    way: `danger.none what.both error-write.written door-stuck.no oven-on.off when.cleaning often.always shuts.yes off-key.stays keys-look.fine manual.call`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'latch-switch',
    check: 'latch-switch',
  },
  {
    who: 'shift worker: the oven heats on, Off does nothing',
    guide: 'error-shows',
    way: 'danger.none what.both error-write.written door-stuck.no oven-on.on turn-off.wont-stop',
    end: 'stop-wont-stop',
    urgency: 'today',
    fault: 'relay-stuck',
  },
  {
    who: 'parent of small children: blank and cold the day after a clean in a wall oven, one reset',
    guide: 'no-heat',
    way: `danger.none what.blank fuel-blank.electric house-power.yes when.in-clean near.cool lamp.dark burners.no-burners panel.ready breaker-look.on controls-off.done breaker-off.done breaker-on.stayed after-reset.blank`,
    end: 'stop-dead',
    urgency: 'soon',
    fault: 'cut-out',
    check: 'cut-out',
    details: { kind: 'wall' },
  },
  {
    who: 'gas range in a power cut, dinner for eight',
    guide: 'no-heat',
    way: 'danger.none what.blank fuel-blank.gas-oven house-power.out',
    end: 'stop-no-power',
    urgency: 'soon',
  },
  {
    who: 'old farm house: half of the rooms dark, oven weak',
    guide: 'no-heat',
    way: 'danger.none what.blank fuel-blank.electric house-power.part',
    end: 'stop-half-power',
    urgency: 'today',
  },
  {
    who: 'holiday eve with food inside: display fine, oven lukewarm and burners weak since the clean',
    guide: 'no-heat',
    way: 'danger.none what.weak fuel.electric lock-key.no-change settings.nothing last-bake.lukewarm when.in-clean near.cool lamp.works burners.some panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'supply-leg',
    check: 'supply',
  },
  {
    who: 'tenant with a gas oven that glows and does not light',
    guide: 'no-heat',
    way: 'danger.none what.cold fuel.gas-oven gas-else.yes lock-key-gas.no-key settings-gas.nothing last-bake-gas.glow when.baking near.cool lamp.works burners.all panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'igniter',
    check: 'igniter-current',
  },
  {
    who: 'grandmother whose grandson set a delayed bake',
    guide: 'no-heat',
    way: 'danger.none what.cold fuel.electric lock-key.no-change settings.was-set',
    end: 'finish-setting',
    urgency: 'none',
    fault: 'setting',
    check: 'controls-look',
  },
  {
    who: 'dead in mid-clean, the breaker trips anew',
    guide: 'no-heat',
    way: 'danger.none what.blank fuel-blank.electric house-power.yes when.in-clean near.cool lamp.dark burners.dead panel.ready breaker-look.tripped controls-off.done breaker-off.done breaker-on.tripped',
    end: 'stop-tripped',
    urgency: 'today',
    fault: 'breaker-tripped',
  },
  {
    who: 'new owner who waits for a steam clean to lock the door',
    guide: 'clean-wont-start',
    way: 'danger.none what.no-lock has-clean.steam',
    end: 'finish-steam',
    urgency: 'none',
    fault: 'steam-only',
    check: 'controls-look',
  },
  {
    who: 'deaf couple, a daughter listened: hum without end, door does not lock',
    guide: 'clean-wont-start',
    way: 'danger.none what.no-lock has-clean.heat near.cool inside.nothing door-shut.shuts lock-key.no-change settings.nothing manual.did-all controls.keys sound.hum-on door-light.yes panel.unsure',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'latch-switch',
    // Under the same lifted top as the switch, and a minute shorter.
    check: 'latch-motor',
  },
  {
    who: 'home helper: light stays on when the door is shut, the clean does nothing',
    guide: 'clean-wont-start',
    way: `danger.none what.nothing has-clean.heat near.cool inside.things take-out.done door-shut.shuts lock-key.no-change settings.nothing manual.did-all controls.keys sound.silent door-light.stays-on ${reset} after-reset.done`,
    end: 'finish-reset',
    urgency: 'soon',
    fault: 'door-switch',
  },
  {
    who: 'foil stuck to the floor before a clean',
    guide: 'clean-wont-start',
    way: 'danger.none what.nothing has-clean.unsure near.cool inside.foil take-out.stuck',
    end: 'stop-foil',
    urgency: 'soon',
  },
  {
    who: 'smells gas while the clean will not start',
    guide: 'clean-wont-start',
    way: 'danger.none what.nothing has-clean.gas',
    end: 'stop-gas',
    urgency: 'emergency',
  },
  {
    who: 'tried to clean, the door is locked and the error went away: over to the locked door',
    guide: 'error-shows',
    way: 'danger.none what.error error-write.gone door-stuck.yes door-locked/since-cold.over-4 door-locked/fan-cold.quiet door-locked/near-cold.cool door-locked/inside-cold.nothing door-locked/forced-cold.no door-locked/controls-cold.keys door-locked/lock-key-cold.no-change door-locked/try-door-cold.stuck door-locked/panel-cold.cannot',
    end: 'door-locked/stop-book',
    urgency: 'soon',
    fault: 'latch-motor',
  },
  {
    who: 'landlord far away: cold oven hours after a clean, tenant pulled at the door',
    guide: 'door-locked',
    way: 'danger.none doing.ended display.time since.over-4 fan.quiet near.cool inside.nothing forced.yes controls-cold.keys lock-key-cold.no-change try-door-cold.stuck panel-cold.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'latch-hook',
    check: 'latch-look',
  },
  {
    who: 'holiday eve with the turkey inside, still warm after half an hour',
    guide: 'door-locked',
    way: 'danger.none doing.ended display.lock since.under-1 fan.running near.warm wait.opened opened.clear',
    end: 'finish-clear',
    urgency: 'none',
    fault: 'not-cool',
    check: 'cool-check',
  },
];

describe('people with an error, a dead oven, a clean that will not start, a locked door', () => {
  it('are many and end in many ways', () => {
    expect(situations.length).toBeGreaterThanOrEqual(20);
    expect(new Set(situations.map(({ end }) => end)).size).toBeGreaterThan(10);
    expect(new Set(situations.map(({ guide }) => guide)).size).toBe(4);
    expect(situations.filter(({ fault }) => fault).length).toBeGreaterThan(12);
  });

  it.each(situations.map((one) => [one.who, one] as const))('%s', (_, one) => {
    expectWalked(one);
  });
});
