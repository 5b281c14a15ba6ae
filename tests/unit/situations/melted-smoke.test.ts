/**
 * Described people whose oven smokes or in which something has melted. What should come
 * first, and after how many answers at most, is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { textFile } from '../../../src/content/load.ts';
import { expectAtMost, expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';
import { gasFlameFirst } from './gas-flame.ts';

const GUIDE = 'melted-smoke';

/** Off and aired, the smoke gone, an electric oven, cooled. */
const cooled = 'turn-off.done air-hot.less fuel-hot.electric wait-reach-hot.cool';
/** Found cold long after, an electric oven. */
const cold = 'turn-off.cold fuel.electric cool-enough.overnight';
/** The same, a gas oven with a good flame. */
const coldGas = 'turn-off.cold fuel.gas-oven oven-flame.blue cool-enough.overnight';

const situations: readonly Situation[] = [
  {
    who: 'roast forgotten in a running self-clean: Off at once, aired out, opened the next day',
    way: 'danger.none what.full turn-off.done air-hot.less fuel-hot.electric wait-reach-hot.overnight inside.food spill.baked-on',
    end: 'finish-wiped',
    urgency: 'none',
    fault: 'spill',
    check: 'inside-look',
  },
  {
    who: 'student who preheated the oven with a cutting board in it',
    way: `danger.none what.melted ${cooled} inside.plastic plastic-where.rack plastic-out.out`,
    end: 'finish-out',
    urgency: 'none',
    fault: 'plastic-inside',
    check: 'inside-look',
  },
  {
    who: 'tenant who moved in: foil fused to the floor of a gas oven',
    way: `danger.none what.melted ${coldGas} inside.foil foil-where.stuck`,
    end: 'stop-foil',
    urgency: 'soon',
    fault: 'foil-floor',
    check: 'inside-look',
  },
  {
    who: 'widower, foil loose on the floor of an electric oven: lifted out, no visit',
    way: `danger.none what.melted ${cold} inside.foil foil-where.loose foil-out.out`,
    end: 'finish-out',
    urgency: 'none',
  },
  {
    who: 'mobile home, foil over the slots of a gas oven, flame not seen',
    way: 'danger.none what.melted turn-off.cold fuel.gas-oven oven-flame.not-seen cool-enough.overnight inside.foil foil-where.slots foil-slots.out',
    end: 'finish-out',
    urgency: 'none',
  },
  {
    who: 'father of three: a toy has dripped onto the heating element',
    way: `danger.none what.melted ${cooled} inside.plastic plastic-where.part`,
    end: 'stop-part',
    urgency: 'today',
    fault: 'plastic-part',
    check: 'inside-look',
  },
  {
    who: 'owner of a parrot: smoke in a self-clean that gets thicker',
    way: 'danger.none what.clean turn-off.done air-hot.more',
    end: 'stop-fire',
    urgency: 'emergency',
  },
  {
    who: 'holiday eve: last year’s goose smokes on for a while after Off, then less',
    way: 'danger.none what.clean turn-off.done air-hot.same smoke-more-hot.less fuel-hot.electric wait-reach-hot.overnight inside.food spill.baked-on',
    end: 'finish-wiped',
    urgency: 'none',
    fault: 'spill',
  },
  {
    who: 'night shift, the smoke is the same after half an hour',
    way: 'danger.none what.heat turn-off.done air-hot.same smoke-more-hot.same',
    end: 'stop-fire',
    urgency: 'emergency',
  },
  {
    who: 'poor sight, cannot tell about the smoke: no alarm made of it',
    way: 'danger.none what.unsure turn-off.unsure air-hot.unsure smoke-more-hot.unsure',
    end: 'stop-book',
    urgency: 'soon',
  },
  {
    who: 'smells like wires, a lid has melted in the drawer',
    way: `danger.none what.heat ${cold} inside.nothing drawer.things`,
    end: 'finish-drawer',
    urgency: 'none',
    fault: 'drawer-things',
    check: 'drawer-look',
  },
  {
    who: 'elderly couple, a neighbor looked: smells of wires, nothing in the oven or the drawer',
    way: `danger.none what.clean ${cooled} inside.nothing drawer.clear smell-kind.wires`,
    end: 'stop-hidden',
    urgency: 'today',
    fault: 'wiring',
    details: { kind: 'free-standing' },
  },
  {
    who: 'blind woman with a friend on the phone: smells burned, smoke came around the door',
    way: `danger.none what.heat ${cold} inside.nothing drawer.clear smell-kind.food smoke-from.door element-look.fine`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'gasket',
    check: 'gasket-look',
  },
  {
    who: 'element with a blister, seen by a handy son: nobody bakes on',
    way: `danger.none what.heat ${cold} inside.nothing drawer.clear smell-kind.unsure smoke-from.unsure element-look.marked`,
    end: 'stop-part',
    urgency: 'today',
    fault: 'bake-element',
    check: 'bake-element',
  },
  {
    who: 'first oven of their own, hot for the second time',
    way: `danger.none what.heat ${cooled} inside.nothing drawer.clear smell-kind.new`,
    end: 'finish-new',
    urgency: 'none',
    fault: 'new-oven',
    check: 'owner-and-plate',
    details: { age: 'under-5' },
  },
  {
    who: 'cleaned the night before with spray, eyes sting while wiping',
    way: `danger.none what.heat ${cooled} inside.cleaner cleaner-wipe.stings`,
    end: 'stop-cleaner',
    urgency: 'today',
    fault: 'cleaner-residue',
  },
  {
    who: 'could not wipe the spray out: a visit, no poison call',
    way: `danger.none what.heat ${cold} inside.cleaner cleaner-wipe.unsure`,
    end: 'stop-book',
    urgency: 'soon',
  },
  {
    who: 'gas oven, sharp smell, no spray used: carbon monoxide, not poison',
    way: 'danger.none what.heat turn-off.cold fuel.gas-oven oven-flame.not-seen cool-enough.overnight inside.nothing drawer.clear smell-kind.sharp spray.no',
    end: 'stop-sharp',
    urgency: 'today',
    fault: 'gas-flame',
    check: 'oven-flame',
  },
  {
    who: 'baker whose gas oven flame turned yellow: told at once',
    way: 'danger.none what.heat turn-off.cold fuel.gas-oven oven-flame.yellow',
    end: 'stop-flame',
    urgency: 'today',
    fault: 'gas-flame',
    check: 'oven-flame',
  },
  {
    who: 'gas oven that lit with a bang',
    way: 'danger.none what.heat turn-off.cold fuel.gas-oven oven-flame.late',
    end: 'stop-late',
    urgency: 'today',
    fault: 'gas-flame',
  },
  {
    who: 'night nurse: it smokes, and Off does nothing',
    way: 'danger.none what.heat turn-off.wont-stop',
    end: 'stop-runaway',
    urgency: 'today',
    fault: 'relay-stuck',
  },
  {
    who: 'smoke and an error: aired out first, then the breaker, no guessing',
    way: 'danger.none what.clean turn-off.error error-write-error.written air-error.gone',
    end: 'stop-smoke-error',
    urgency: 'soon',
  },
  {
    who: 'smoky self-clean, everything cold, the door stays locked: over to the locked door',
    way: `danger.none what.clean ${cooled} inside.locked door-locked/wait-cold.no-less`,
    end: 'door-locked/stop-still-hot',
    urgency: 'today',
  },
  {
    who: 'smelled in the self-clean, now over, door locked and still warm',
    way: 'danger.none what.locked door-locked/wait-cold.less',
    end: 'door-locked/finish-overnight',
    urgency: 'none',
  },
];

describe('people whose oven smokes or has something melted in it', () => {
  it('are many and end in many ways', () => {
    expect(situations.length).toBeGreaterThanOrEqual(20);
    expect(new Set(situations.map(({ end }) => end)).size).toBeGreaterThan(12);
  });

  it.each(situations)('$who', expectWalked(GUIDE));
});

describe('answers it takes', () => {
  it.each([
    ['to be told to turn it off', 2, 'danger.none what.full', 'turn-off'],
    ['to be told to let in air and wait', 3, 'danger.none what.heat turn-off.done', 'air'],
    [
      'to be told of a yellow flame, cold oven',
      5,
      'danger.none what.heat turn-off.cold fuel.gas-oven oven-flame.yellow',
      'stop-flame',
    ],
    [
      'to lift out foil',
      8,
      `danger.none what.melted ${cold} inside.foil foil-where.loose foil-out.out`,
      'finish-out',
    ],
    [
      'to be told to book, hot gas oven',
      12,
      'danger.none what.heat turn-off.done air-hot.less fuel-hot.gas-oven oven-flame-hot.blue wait-reach-hot.cool inside.nothing drawer.clear smell-kind.food smoke-from.vent element-look.none-seen',
      'stop-book',
    ],
  ])('%s: %i at most', expectAtMost(GUIDE));
});

describe('what is said', () => {
  const page = (name: string) => JSON.stringify(textFile('en', GUIDE)[name]);

  it.each([
    ['turn-off', /Press Off or Cancel now\. Keep the door shut/],
    ['turn-off', /self-clean too, whatever is inside/],
    ['air', /birds/],
    ['spill', /Throw the food away/],
    ['stop-sharp', /carbon monoxide/],
  ])('%s: %s', (name, words) => expect(page(name)).toMatch(words));

  it('never lets a self-clean run on', () => {
    const all = JSON.stringify(textFile('en', GUIDE));
    expect(all).not.toMatch(/run to its end|let the self-clean run/i);
  });
});

it('no gas oven is told that all is well before its flame was asked for', () => {
  expect(gasFlameFirst(GUIDE)).toBeGreaterThan(3);
});
