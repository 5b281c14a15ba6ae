/**
 * Described people with a burner that gives trouble. What should come first is common
 * practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

const GUIDE = 'burner';

const situations: readonly Situation[] = [
  {
    who: 'cook who washed the caps: one burner clicks and does not light',
    guide: GUIDE,
    way: 'danger.none what.no-light gas-off.done power.yes click.clicks which.one near.cool look-gas.crooked cap-set.sits',
    end: 'finish-burner',
    urgency: 'none',
    fault: 'cap-off',
    check: 'burner-look',
  },
  {
    who: 'family whose milk boiled over: it clicks on and on',
    guide: GUIDE,
    way: 'danger.none what.no-light gas-off.done power.yes click.keeps-on which.all near.warm wait.cool look-gas.wet dry.dry',
    end: 'finish-burner',
    urgency: 'none',
    fault: 'moisture',
    // Tells of a stuck switch in the same look.
    check: 'spark-look',
  },
  {
    who: 'hard of hearing, saw no spark at any burner since a storm',
    guide: GUIDE,
    way: 'danger.none what.no-light gas-off.done power.yes click.silent which.all near.cool look-gas.fine',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'spark-module',
    check: 'spark-look',
    details: { storm: 'yes', burners: 'none' },
  },
  {
    who: 'gas range in a power cut, soup half done',
    guide: GUIDE,
    way: 'danger.none what.no-light gas-off.done power.dark',
    end: 'stop-no-spark',
    urgency: 'soon',
  },
  {
    who: 'tenant who still smells gas after five minutes',
    guide: GUIDE,
    way: 'danger.none what.no-light gas-off.smells',
    end: 'stop-gas',
    urgency: 'emergency',
  },
  {
    who: 'shared flat, two with a headache, flame yellow',
    guide: GUIDE,
    way: 'danger.none what.flame flame-off.done well.sick',
    end: 'stop-co',
    urgency: 'emergency',
  },
  {
    who: 'moved in last week with a range run on the other gas before: all flames yellow',
    guide: GUIDE,
    way: 'danger.none what.flame flame-off.done well.fine flame-how.yellow',
    end: 'stop-flame',
    urgency: 'today',
    fault: 'air-mix',
    check: 'flame-look',
    details: { repairs: 'yes', age: 'under-5' },
  },
  {
    who: 'street works: no gas thing in the house works',
    guide: GUIDE,
    way: 'danger.none what.no-light gas-off.done power.yes click.clicks which.none-home',
    end: 'stop-gas-supply',
    urgency: 'today',
    fault: 'gas-supply',
  },
  {
    who: 'landlord’s kitchen lined with foil round the gas burners',
    guide: GUIDE,
    way: 'danger.none what.foil kind.gas-burner flame-off.done well.fine flame-how.right near.cool look-gas.foil foil-out.out',
    end: 'finish-foil',
    urgency: 'none',
    fault: 'foil-gas',
    check: 'burner-look',
  },
  {
    who: 'grandfather with foil in the drip pan that touches the coil',
    guide: GUIDE,
    way: 'danger.none what.foil kind.electric el-off.done el-kind.coil el-how.right near-el.cool look-el.touches',
    end: 'stop-foil',
    urgency: 'today',
    fault: 'foil-electric',
  },
  {
    who: 'night shift: one coil glows bright in one spot',
    guide: GUIDE,
    way: 'danger.none what.element el-off.done el-kind.coil el-how.spot',
    end: 'stop-spot',
    urgency: 'soon',
    fault: 'element',
    check: 'element-ohms',
  },
  {
    who: 'coil that comes and goes with the pan, sits loose',
    guide: GUIDE,
    way: 'danger.none what.element el-off.done el-kind.coil el-how.on-off el-which.one near-el.cool look-el.loose',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'element-socket',
    check: 'socket-look',
  },
  {
    who: 'wheelchair user who cannot reach the panel: all coils just warm',
    guide: GUIDE,
    way: 'danger.none what.element el-off.done el-kind.coil el-how.weak el-which.all panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'supply-leg',
    check: 'supply',
  },
  {
    who: 'dropped a pot on the glass top',
    guide: GUIDE,
    way: 'danger.none what.element el-off.done el-kind.cracked',
    end: 'stop-cracked',
    urgency: 'today',
    fault: 'glass-top',
  },
];

describe('people with a burner that gives trouble', () => {
  it('are many and end in many ways', () => {
    expect(situations.length).toBeGreaterThanOrEqual(10);
    expect(new Set(situations.map(({ end }) => end)).size).toBeGreaterThan(8);
  });

  it.each(situations.map((one) => [one.who, one] as const))('%s', (_, one) => {
    expectWalked(one);
  });
});
