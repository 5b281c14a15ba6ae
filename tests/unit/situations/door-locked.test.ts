/**
 * Described people with a locked door, with a self-clean that does not start, and with a trouble
 * that is on no list. What should come first, and after how many answers at most, is common
 * practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import { expectAtMost, expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

/** Power off and on once, at a panel that is fit and in reach. */
const reset = 'panel.ready breaker-off.done breaker-on.stayed';
const cold = 'danger.none since.overnight';

const situations: readonly (Situation & { readonly most?: number })[] = [
  {
    who: 'nurse home from a night shift, self-clean ended 20 minutes ago: she looks again tomorrow',
    way: 'danger.none since.under-1 wait.less',
    end: 'finish-overnight',
    urgency: 'none',
    fault: 'not-cool',
  },
  {
    who: 'couple in an apartment, 2 hours after the self-clean, fan still running, then it clicks',
    way: 'danger.none since.1-to-4 near.fan wait.opened opened.fine',
    end: 'finish-open',
    urgency: 'none',
    fault: 'not-cool',
  },
  {
    who: 'hand numb from chemotherapy, 5 hours after: she cannot tell heat',
    way: 'danger.none since.over-4 near.unsure wait.unsure',
    end: 'finish-overnight',
    urgency: 'none',
  },
  {
    who: 'farmhouse, oven as hot as before after 6 hours with everything off',
    way: 'danger.none since.over-4 near.heat wait.no-less',
    end: 'stop-still-hot',
    urgency: 'today',
  },
  {
    who: 'roast forgotten in the oven, self-clean running: turned off, cooled overnight, opens',
    way: 'danger.none since.running still-cleaning.turned-off wait.overnight display.time off-once.same controls.buttons try-door.opened opened.fine',
    end: 'finish-open',
    urgency: 'none',
  },
  {
    who: 'roast forgotten, and Off does nothing: smoke in the kitchen',
    way: 'danger.none since.running still-cleaning.wont-stop',
    end: 'stop-runaway',
    urgency: 'today',
  },
  {
    who: 'toddler pressed buttons, no self-clean, padlock on the display',
    way: 'danger.none since.never near.quiet display.lock control-lock.went-off try-door.opened opened.fine',
    end: 'finish-open',
    urgency: 'none',
    fault: 'control-lock',
  },
  {
    who: 'teenager set a delayed self-clean: the display says Delay, Off ends it',
    way: 'danger.none since.never near.quiet display.word off-once.changed try-door.opened opened.fine',
    end: 'finish-open',
    urgency: 'none',
    fault: 'setting',
  },
  {
    who: 'storm cut the self-clean short, power back, clock flashing: a reset frees it',
    way: `danger.none since.outage house-power.yes near.quiet display.flashing set-clock.set off-once.same controls.buttons try-door.stuck ${reset} listen.hum-click try-again.opened opened.fine`,
    end: 'finish-open',
    urgency: 'none',
    fault: 'control-hung',
  },
  {
    who: 'wheelchair user, breaker panel in the cellar, nobody to help',
    way: `${cold} display.time off-once.same controls.buttons try-door.stuck panel.cannot`,
    end: 'stop-book',
    urgency: 'soon',
  },
  {
    who: 'retired engineer, cold and empty oven, a click at the lock, does not want another self-clean',
    way: `${cold} display.lock control-lock.no-change off-once.same controls.buttons try-door.stuck ${reset} listen.click try-again.stuck inside.nothing forced.no last-gate.not-all`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'latch-motor',
  },
  {
    who: 'landlord: an error shows, and the door was pulled hard',
    way: `${cold} display.error error-write.written off-once.same controls.buttons try-door.stuck ${reset} listen.error error-after.same`,
    end: 'stop-error',
    urgency: 'soon',
  },
  {
    who: 'error at first, opens after the reset: no word of "as usual"',
    way: `${cold} display.error error-write.written off-once.changed try-door.opened opened.fine`,
    end: 'finish-service',
    urgency: 'soon',
  },
  {
    who: 'blank display since the self-clean, kitchen has power, oven light works',
    way: `${cold} display.blank house-power.yes lamp.works ${reset} listen.blank`,
    end: 'stop-dead',
    urgency: 'soon',
    fault: 'cut-out',
  },
  {
    who: 'old lever range, knob turned away from Clean, lever stuck cold',
    way: `${cold} display.no-display off-once.same controls.lever lever.stuck lever-knob.away forced.no`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'selector-moved',
  },
  {
    who: 'lever range with the knob at Clean, lever stuck cold',
    way: `${cold} display.no-display off-once.same controls.lever lever.stuck lever-knob.at-clean forced.no`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'heat-lock',
  },
  {
    who: 'breaker already tried by the neighbor: it trips',
    way: `${cold} display.time off-once.same controls.buttons try-door.stuck panel.tripped`,
    end: 'stop-tripped',
    urgency: 'today',
  },
  {
    who: 'foil left inside, lock hums and clicks, still stuck',
    way: `${cold} display.time off-once.same controls.buttons try-door.stuck ${reset} listen.hum-click try-again.stuck inside.foil foil-care.read forced.no`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'debris',
  },
  {
    who: 'first self-clean ever: racks were in, taken out',
    guide: 'clean-wont-start',
    way: 'danger.none what.nothing has-clean.heat settings.nothing steps.missed',
    end: 'finish-ready',
    urgency: 'none',
    fault: 'missed-step',
  },
  {
    who: 'new oven with steam cleaning: the door never locks',
    guide: 'clean-wont-start',
    way: 'danger.none what.no-lock has-clean.steam',
    end: 'finish-steam',
    urgency: 'none',
    fault: 'steam-only',
  },
  {
    who: 'oven light stays on with the door shut, lock silent',
    guide: 'clean-wont-start',
    way: `danger.none what.nothing has-clean.heat settings.nothing steps.did-all cool-enough.overnight inside.nothing door-shut.shut sound.silent door-light.stays-on panel.cannot`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'door-switch',
  },
  {
    who: 'grandmother: the oven light is out',
    guide: 'something-else',
    way: 'danger.none part.lamp bulb.dark',
    end: 'finish-bulb',
    urgency: 'none',
  },
  {
    who: 'new owner of a wall oven: a fan runs after cooking',
    guide: 'something-else',
    way: 'danger.none part.fan fan-after.after-use',
    end: 'finish-fan',
    urgency: 'none',
  },
  {
    who: 'range hums in the night, everything works',
    guide: 'something-else',
    way: 'danger.none part.noise since-when.days usable.all',
    end: 'stop-book',
    urgency: 'soon',
  },
];

describe('a described person with a locked door or its neighbors', () => {
  it.each(situations)('$who', expectWalked('door-locked'));
});

describe('answers it takes', () => {
  it.each([
    ['to be told to wait', 2, 'danger.none since.under-1', 'wait'],
    ['to be told to wait, hours after', 3, 'danger.none since.over-4 near.heat', 'wait'],
    [
      'to clear the control lock',
      5,
      'danger.none since.over-4 near.quiet display.lock control-lock.went-off',
      'try-door',
    ],
    [
      'to clear a hung control',
      12,
      `danger.none since.over-4 near.quiet display.time off-once.same controls.buttons try-door.stuck ${reset} listen.click try-again.opened`,
      'opened',
    ],
    [
      'to be told to book',
      14,
      `danger.none since.over-4 near.quiet display.time off-once.same controls.buttons try-door.stuck ${reset} listen.nothing try-again.stuck inside.nothing forced.no`,
      'stop-book',
    ],
  ])('%s: %i at most', expectAtMost('door-locked'));
});

describe('a hot oven or a running fan', () => {
  it('never reaches the breaker or the door without having waited', () => {
    const guide = guides().find(({ id }) => String(id) === 'door-locked');
    if (!guide) throw new Error('no door-locked');
    const hot = new Set(['since.under-1', 'near.heat', 'near.fan', 'near.unsure']);
    const waited = new Set(['wait.cool', 'wait.overnight', 'wait.opened']);
    // Pages that a journey can reach in each of two states: heat told and not yet waited for, or not.
    const todo: [string, boolean][] = [[guide.start, false]];
    const seen = new Set<string>();
    let reached = 0;
    for (let next = todo.pop(); next; next = todo.pop()) {
      const [id, warm] = next;
      if (seen.has(`${id} ${String(warm)}`)) continue;
      seen.add(`${id} ${String(warm)}`);
      const node = [...guide.nodes.values()].find((one) => String(one.id) === id);
      if (!node) throw new Error(id);
      if (node.action === 'breaker' || node.action === 'door-by-hand') {
        reached += 1;
        expect(warm, id).toBe(false);
      }
      for (const answer of node.answers) {
        const name = `${node.sentences}.${answer.id}`;
        todo.push([answer.to, hot.has(name) || (warm && !waited.has(name))]);
      }
    }
    expect(reached).toBeGreaterThan(5);
  });
});
