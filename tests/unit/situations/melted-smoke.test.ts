/**
 * Described people whose oven smokes or in which something has melted. What should come
 * first is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

const GUIDE = 'melted-smoke';

/** Off and aired, the smoke gone, waited until cool, opened. */
const opened = 'oven-on.on turn-off.done air.done smoke-now.less near.warm wait.cool door.opens';
/** Found cold long after, opened. */
const cold = 'oven-on.cold near.cool door.opens';

const situations: readonly Situation[] = [
  {
    who: 'student who preheated the oven with a cutting board in it',
    guide: GUIDE,
    way: `danger.none what.melted ${opened} inside.plastic plastic-where.rack plastic-out.out look-after.clear`,
    end: 'finish-out',
    urgency: 'none',
    fault: 'plastic-inside',
    check: 'inside-look',
  },
  {
    who: 'tenant who moved in: foil fused to the floor of a gas oven',
    guide: GUIDE,
    way: `danger.none what.melted ${cold} inside.foil foil-where.floor`,
    end: 'stop-foil',
    urgency: 'soon',
    fault: 'foil-floor',
    check: 'inside-look',
    details: { fuel: 'gas' },
  },
  {
    who: 'father of three: a toy has dripped onto the heating part',
    guide: GUIDE,
    way: `danger.none what.melted ${opened} inside.plastic plastic-where.part`,
    end: 'stop-part',
    urgency: 'today',
    fault: 'plastic-part',
    check: 'inside-look',
  },
  {
    who: 'owner of a parrot: smoke in a clean that does not clear',
    guide: GUIDE,
    way: 'danger.none what.clean oven-on.on turn-off.done air.done smoke-now.same',
    end: 'stop-smoke',
    urgency: 'emergency',
  },
  {
    who: 'holiday eve: the clean smokes from last year’s goose, nothing else',
    guide: GUIDE,
    way: `danger.none what.clean ${opened} inside.food spill.baked-on`,
    end: 'finish-wiped',
    urgency: 'none',
    fault: 'spill',
    check: 'inside-look',
  },
  {
    who: 'elderly couple, a neighbor looked: smells of wires at the keys, nothing to see inside',
    guide: GUIDE,
    way: `danger.none what.clean ${opened} inside.nothing smell-kind.wires`,
    end: 'stop-hidden',
    urgency: 'today',
    fault: 'wiring',
    details: { kind: 'free-standing' },
  },
  {
    who: 'blind woman with a friend on the phone: smells burnt, smoke came round the door',
    guide: GUIDE,
    way: `danger.none what.heat ${cold} inside.nothing smell-kind.food drawer.nothing smoke-from.door seal.torn parts-look.fine burns.no oven-flame.electric`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'gasket',
    check: 'door-fit',
  },
  {
    who: 'first oven of their own, hot for the second time',
    guide: GUIDE,
    way: `danger.none what.heat ${opened} inside.nothing smell-kind.new new.yes`,
    end: 'finish-new',
    urgency: 'none',
    fault: 'new-oven',
    check: 'owner-and-plate',
    details: { age: 'under-5' },
  },
  {
    who: 'cleaned the night before with spray, eyes sting',
    guide: GUIDE,
    way: `danger.none what.heat ${opened} inside.cleaner cleaner-wipe.stings`,
    end: 'stop-cleaner',
    urgency: 'today',
    fault: 'cleaner-residue',
  },
  {
    who: 'baker whose gas oven flame turned yellow',
    guide: GUIDE,
    way: `danger.none what.heat ${cold} inside.nothing smell-kind.unsure drawer.no-drawer smoke-from.vent seal.fine parts-look.none-seen burns.no oven-flame.yellow`,
    end: 'stop-flame',
    urgency: 'today',
    fault: 'gas-flame',
    check: 'oven-flame',
    details: { fuel: 'gas' },
  },
  {
    who: 'night nurse: it smokes, and Off does nothing',
    guide: GUIDE,
    way: 'danger.none what.heat oven-on.on turn-off.wont-stop',
    end: 'stop-wont-stop',
    urgency: 'today',
    fault: 'heat-relay',
  },
  {
    who: 'smelled after the clean, and the door stays locked: over to the locked door',
    guide: GUIDE,
    way: 'danger.none what.locked door-locked/since-cold.1-to-4 door-locked/fan-cold.quiet door-locked/near-cold.warm door-locked/wait-cold.still-hot',
    end: 'door-locked/stop-still-hot',
    urgency: 'today',
  },
];

describe('people whose oven smokes or has something melted in it', () => {
  it('are many and end in many ways', () => {
    expect(situations.length).toBeGreaterThanOrEqual(10);
    expect(new Set(situations.map(({ end }) => end)).size).toBeGreaterThan(8);
  });

  it.each(situations.map((one) => [one.who, one] as const))('%s', (_, one) => {
    expectWalked(one);
  });
});
