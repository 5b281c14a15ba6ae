/**
 * Described people whose oven is too hot, too cool or uneven. What should come first is
 * common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

const GUIDE = 'wrong-temperature';

/** Looked at with the oven cold: no foil, a sound seal, a door that shuts. */
const looked = 'wait.cool cover.clear gasket.sound';

const situations: readonly Situation[] = [
  {
    who: 'home baker with a thermometer: for a year all cakes take longer, cooler by the same each time',
    guide: GUIDE,
    way: `danger.none what.too-cool fuel.electric since.slowly fan.no-fan preheat.waits ${looked} thermometer.at-350 first.under second.under third.under offset.none`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'sensor-drift',
    check: 'sensor-at-plug',
  },
  {
    who: 'new owner, first bread: food goes in at the beep, the thermometer is close each time',
    guide: GUIDE,
    way: `danger.none what.too-cool fuel.electric since.always fan.no-fan preheat.at-beep ${looked} thermometer.at-350 first.close second.close third.close offset.none`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'habit-preheat',
  },
  {
    who: 'gas oven of a tenant: slower every month, never gets there',
    guide: GUIDE,
    way: `danger.none what.too-cool fuel.gas-oven flame.blue since.slowly fan.no-fan preheat.waits ${looked} thermometer.at-400 first.far-under second.far-under third.under offset.none`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'igniter',
    check: 'igniter-current',
  },
  {
    who: 'gas oven in a cabin, yellow flame and soot on the pans',
    guide: GUIDE,
    way: 'danger.none what.uneven food.dark-bottom pan.light fuel.gas-oven flame.yellow',
    end: 'stop-flame',
    urgency: 'today',
  },
  {
    who: 'wheelchair user, a helper looks inside: foil over the whole middle rack',
    guide: GUIDE,
    way: 'danger.none what.uneven food.dark-bottom pan.light fuel.electric since.slowly fan.no-fan preheat.waits wait.cool cover.rack cover-out.done',
    end: 'finish-cover',
    urgency: 'none',
    fault: 'cover',
    check: 'oven-look',
  },
  {
    who: 'holiday eve: the oven runs on though it is off, a roast inside',
    guide: GUIDE,
    way: 'danger.none what.runaway',
    end: 'stop-runaway',
    urgency: 'today',
  },
  {
    who: 'landlord far away, tenant who has no manual: cookies burn in front of a torn seal',
    guide: GUIDE,
    way: 'danger.none what.uneven food.one-side level.flat fuel.electric since.slowly fan.unsure preheat.at-beep wait.cool cover.clear gasket.torn',
    end: 'stop-gasket',
    urgency: 'soon',
    fault: 'gasket',
    check: 'gasket-look',
  },
  {
    who: 'hard of sight, a daughter reads: far too hot from one day to the next',
    guide: GUIDE,
    way: `danger.none what.too-hot fuel.electric since.sudden fan.no-fan preheat.waits ${looked} thermometer.at-350 first.far-over second.far-over third.far-over offset.has offset-set.too-far`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'relay-stuck',
    check: 'relay-output',
  },
  {
    who: 'couple who bought a used range: the offset had been moved',
    guide: GUIDE,
    way: `danger.none what.too-hot fuel.dual since.always fan.no-fan preheat.waits ${looked} thermometer.none offset-look.changed offset-back.done`,
    end: 'finish-zero',
    urgency: 'none',
    fault: 'offset',
    check: 'settings-look',
  },
  {
    who: 'retired cook whose glass dish burns all pies below',
    guide: GUIDE,
    way: 'danger.none what.uneven food.dark-bottom pan.dark',
    end: 'finish-pan',
    urgency: 'none',
  },
  {
    who: 'student: an error shows when the oven gets warm',
    guide: GUIDE,
    way: 'danger.none what.error error-shows/error-write.written error-shows/door-stuck.no error-shows/oven-on.off error-shows/when.baking error-shows/often.always error-shows/shuts.yes error-shows/off-key.back error-shows/keys-look.fine error-shows/manual.no-manual error-shows/panel.cannot',
    end: 'error-shows/stop-book',
    urgency: 'soon',
    fault: 'sensor',
    check: 'sensor-at-plug',
  },
];

describe('people whose oven is too hot, too cool or uneven', () => {
  it('are many', () => {
    expect(situations.length).toBeGreaterThanOrEqual(10);
  });

  it.each(situations)('$who', expectWalked);
});
