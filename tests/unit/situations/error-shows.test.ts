/**
 * Described people whose range shows an error, beeps, or does not take a button. What should come
 * first, and after how many answers at most, is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { guideText, guides } from '../../../src/content/load.ts';
import { expectAtMost, expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

/** Power off and on once, at a panel that is fit and in reach. */
const reset = 'panel.ready breaker-off.done breaker-on.stayed';
const error = 'danger.none what.error error-write.written';
/** An error that Off does not clear, with the door shut and nothing in the manual. */
const stays = `${error} off-once.same now.stays door-shut.shut keys-look.fine manual.no-help`;

const situations: readonly Situation[] = [
  {
    who: 'tired father: letters after the roast, gone with one press of Off and not seen again',
    way: `${error} off-once.changed now.gone`,
    end: 'finish-watch',
    urgency: 'none',
  },
  {
    who: 'back from a trip after a storm: letters, Off clears them, the clock wants setting',
    way: `${error} off-once.changed now.clock set-clock.set clock-look.runs`,
    end: 'finish-watch',
    urgency: 'none',
    fault: 'power-letters',
  },
  {
    who: 'rented cabin: the clock loses the time again and again',
    way: `${error} off-once.changed now.clock set-clock.set clock-look.again when.outage often.on-off`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'supply-low',
    check: 'supply',
  },
  {
    who: 'clock flashes since the outage, nothing else',
    way: 'danger.none what.flashing settings.was-set',
    end: 'finish-setting',
    urgency: 'none',
  },
  {
    who: 'first apartment: it beeps and says End since the rice is done',
    way: 'danger.none what.word word.ended off-once.changed now.gone',
    end: 'finish-clear',
    urgency: 'none',
    fault: 'timer-ran-out',
    check: 'controls-look',
  },
  {
    who: 'grandfather typed End as an error: still no visit',
    way: 'danger.none what.error error-write.word word.ended off-once.changed now.gone',
    end: 'finish-watch',
    urgency: 'none',
  },
  {
    who: 'babysitter: Hot stands there after the pizza',
    way: 'danger.none what.word word.normal',
    end: 'finish-normal',
    urgency: 'none',
  },
  {
    who: 'family that keeps the Sabbath: the oven says so and beeps at no button',
    way: 'danger.none what.word word.setting settings.was-set',
    end: 'finish-setting',
    urgency: 'none',
    fault: 'setting',
  },
  {
    who: 'a rack kept the door open a crack: Door, gone once it is shut',
    way: 'danger.none what.word word.door door-shut.was-open door-look.gone',
    end: 'finish-clear',
    urgency: 'none',
    fault: 'door-ajar',
  },
  {
    who: 'letters with the door ajar, gone once it is shut: watched, no visit',
    way: `${error} off-once.same now.stays door-shut.was-open door-look.gone`,
    end: 'finish-watch',
    urgency: 'none',
    fault: 'door-ajar',
  },
  {
    who: 'bent hinge: the door will not shut all the way',
    way: `${error} off-once.same now.stays door-shut.gap when.baking often.always`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'door-ajar',
    check: 'door-fit',
  },
  {
    who: 'toddler held the Lock button: the buttons do nothing',
    way: 'danger.none what.dead control-lock.went-off',
    end: 'finish-lock',
    urgency: 'none',
    fault: 'control-lock',
  },
  {
    who: 'wheelchair user, nobody to reach the breaker panel: worn button, the rest mute',
    way: 'danger.none what.dead control-lock.no-change off-once.dead now.stays door-shut.shut keys-look.worn manual.no-help panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'keypad',
    check: 'keypad',
  },
  {
    who: 'pasta water boiled over the buttons, dried overnight',
    way: `${error} off-once.dead now.stays door-shut.shut keys-look.wet dry-keys.gone`,
    end: 'finish-watch',
    urgency: 'none',
    fault: 'keys-wet',
  },
  {
    who: 'same, and they will look again tomorrow',
    way: `${error} off-once.dead now.stays door-shut.shut keys-look.wet dry-keys.later`,
    end: 'finish-dry',
    urgency: 'none',
  },
  {
    who: 'tenant on the phone, landlord far away: error in every bake, manual says call',
    way: `${error} off-once.changed now.stays door-shut.shut keys-look.fine manual.call when.baking often.always`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'sensor',
    check: 'sensor-at-plug',
  },
  {
    who: 'retired engineer: an error in the self-clean, door open, back after one reset',
    way: `${stays} ${reset} after-reset.error error-after.same`,
    end: 'stop-error',
    urgency: 'soon',
  },
  {
    who: 'hung after a brownout: gone with the reset',
    way: `${stays} ${reset} after-reset.normal`,
    end: 'finish-watch',
    urgency: 'none',
    fault: 'control-hung',
    details: { storm: 'yes' },
  },
  {
    who: 'the handyman reset it this morning, no change',
    way: `${stays} panel.reset-before when.idle often.always`,
    end: 'stop-book',
    urgency: 'soon',
  },
  {
    who: 'shift worker: Off pressed, the oven goes on heating',
    way: `${error} off-once.same now.hot`,
    end: 'stop-runaway',
    urgency: 'today',
    fault: 'relay-stuck',
  },
  {
    who: 'error in the self-clean and the door is locked: on to the wait for the lock',
    way: `${error} off-once.same now.locked door-locked/wait.less`,
    end: 'door-locked/finish-overnight',
    urgency: 'none',
  },
  {
    who: 'hard of hearing, a neighbor hears it: the alarm on the wall, loud beeps in a row',
    way: 'danger.none what.beeps beep-source.alarm alarm-kind.loud',
    end: 'stop-co',
    urgency: 'emergency',
  },
  {
    who: 'old smoke alarm in the hall chirps',
    way: 'danger.none what.beeps beep-source.unsure alarm-kind.chirp',
    end: 'finish-alarm',
    urgency: 'none',
  },
  {
    who: 'cannot tell what beeps: told to look at the alarms, no 911 call made of it',
    way: 'danger.none what.beeps beep-source.unsure alarm-kind.unsure',
    end: 'finish-alarm',
    urgency: 'none',
  },
  {
    who: 'beeps on and on by itself, Off stops it for good',
    way: 'danger.none what.beeps beep-source.range off-once.changed now.gone',
    end: 'finish-clear',
    urgency: 'none',
    fault: 'timer-ran-out',
  },
];

describe('a described person with an error, a beep or dead buttons', () => {
  it.each(situations)('$who', expectWalked('error-shows'));
});

describe('answers it takes', () => {
  it.each([
    ['to watch an error that Off cleared', 5, `${error} off-once.changed now.gone`, 'finish-watch'],
    [
      'to be done with a timer',
      5,
      'danger.none what.word word.ended off-once.changed now.gone',
      'finish-clear',
    ],
    [
      'to clear the control lock',
      4,
      'danger.none what.word word.lock control-lock.went-off',
      'finish-lock',
    ],
    ['to clear a hung control', 12, `${stays} ${reset} after-reset.normal`, 'finish-watch'],
    [
      'to be told to book',
      14,
      `${error} off-once.same now.stays door-shut.shut keys-look.fine manual.call when.idle often.first`,
      'stop-book',
    ],
  ])('%s: %i at most', expectAtMost('error-shows'));
});

describe('what must be said', () => {
  const guide = guides().find(({ id }) => String(id) === 'error-shows');
  if (!guide) throw new Error('no error-shows');
  const text = guideText('en', guide);
  const said = (page: string) => JSON.stringify(text[page]);

  it('names carbon monoxide where an alarm may sound, and what to do if it turns loud', () => {
    for (const page of ['alarm-kind', 'finish-alarm', 'stop-co'])
      expect(said(page)).toMatch(/carbon monoxide/);
    expect(said('finish-alarm')).toMatch(/get everyone out and call/);
  });

  it('asks when and how often only where nothing cures any more', () => {
    for (const page of ['when', 'often'])
      for (const node of guide.nodes.values())
        if (node.sentences === page)
          for (const { to } of node.answers)
            expect(String(guide.nodes.get(to)?.page)).toMatch(/^(often|stop-book)$/);
  });
});
