/**
 * Described people whose oven is too hot, too cool or uneven. What should come first, and after
 * how many answers at most, is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import { textFile } from '../../../src/content/load.ts';
import { gasFlameFirst } from './gas-flame.ts';
import { expectAtMost, expectWalked, walked } from './walked.ts';
import type { Situation } from './walked.ts';

const GUIDE = 'wrong-temperature';

/** Looked at with the oven cold: nothing in the way, elements and seal good. */
const looked = (track = '') =>
  `cool-enough${track}.overnight inside${track}.clear element-look${track}.fine seal${track}.sound`;
const habits = 'preheat.waits fan.no-fan';
/** An electric oven that got cooler slowly, or too hot. */
const cool = `danger.none what.too-cool fuel.electric since.slowly ${habits} ${looked()}`;
const hot = (since: string) =>
  `danger.none what.too-hot fuel-fault.electric since-fault.${since} ${looked('-fault')}`;

const situations: readonly Situation[] = [
  {
    who: 'home baker with a thermometer: for a year all cakes take longer, cooler by the same each time',
    way: `${cool} thermometer.at-350 first.under second-under.under third-under.under offset-set-under.none`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'sensor-drift',
    check: 'sensor-at-plug',
  },
  {
    who: 'the same with a manual: adjusted, no visit',
    way: `${cool} thermometer.at-350 first.under second-under.under third-under.under offset-set-under.done`,
    end: 'finish-offset',
    urgency: 'none',
  },
  {
    who: 'new owner who waits after the beep, three readings in the band: it is normal',
    way: `danger.none what.too-cool fuel.electric since.always ${habits} ${looked()} thermometer.at-350 first.close second-close.close third-close.close`,
    end: 'finish-normal',
    urgency: 'none',
    fault: 'normal',
  },
  {
    who: 'first bread: food goes in at the beep',
    way: 'danger.none what.too-cool fuel.electric since.always preheat.at-beep',
    end: 'finish-preheat',
    urgency: 'none',
    fault: 'habit-preheat',
  },
  {
    who: 'bakes with convection since they moved in, always too cool',
    way: 'danger.none what.too-cool fuel.electric since.always preheat.waits fan.with-fan',
    end: 'finish-fan',
    urgency: 'none',
    fault: 'fan-mode',
    check: 'settings-look',
  },
  {
    who: 'gas oven of a tenant: slower every month, never gets there',
    way: `danger.none what.too-cool fuel.gas-oven oven-flame.blue since.slowly ${habits} cool-enough.overnight inside.clear element-look.none-seen seal.sound thermometer.at-400 first.far-under second-cool.far-under third-cool.under`,
    end: 'stop-book',
    urgency: 'soon',
    fault: 'igniter',
    check: 'igniter-current',
  },
  {
    who: 'gas oven in a cabin, yellow flame and soot on the pans',
    way: 'danger.none what.uneven food.dark-bottom pan.light fuel.gas-oven oven-flame.yellow',
    end: 'stop-flame',
    urgency: 'today',
    fault: 'gas-burner',
    check: 'oven-flame',
  },
  {
    who: 'gas oven that lights with a whoosh',
    way: 'danger.none what.too-cool fuel.gas-oven oven-flame.late',
    end: 'stop-late',
    urgency: 'today',
    fault: 'igniter',
  },
  {
    who: 'wheelchair user, a helper looks inside: foil over the whole middle rack',
    way: `danger.none what.uneven food.dark-bottom pan.light fuel.electric since.slowly ${habits} cool-enough.overnight inside.foil foil-where.loose foil-out.out`,
    end: 'finish-cover',
    urgency: 'none',
    fault: 'cover',
    check: 'oven-look',
  },
  {
    who: 'gas oven, foil over the slots, nobody ever saw the flame',
    way: `danger.none what.uneven food.dark-top fuel.gas-oven oven-flame.not-seen since.slowly ${habits} cool-enough.overnight inside.foil foil-where.slots foil-slots.out`,
    end: 'finish-cover',
    urgency: 'none',
  },
  {
    who: 'foil has crept onto the bottom element',
    way: `danger.none what.uneven food.dark-bottom pan.light fuel.electric since.slowly ${habits} cool-enough.overnight inside.foil foil-where.touches`,
    end: 'stop-part',
    urgency: 'today',
  },
  {
    who: 'holiday eve: the oven runs on though it is off, a roast inside',
    way: 'danger.none what.wont-stop',
    end: 'stop-runaway',
    urgency: 'today',
    fault: 'relay-stuck',
    check: 'relay-output',
  },
  {
    who: 'the same from the danger list',
    way: 'danger.runaway',
    end: 'stop-runaway',
    urgency: 'today',
    fault: 'relay-stuck',
    check: 'relay-output',
  },
  {
    who: 'off for six hours and as hot as before',
    way: 'danger.none what.too-hot fuel-fault.electric since-fault.sudden cool-enough-fault.warm wait-reach-fault.no-less',
    end: 'stop-still-hot',
    urgency: 'today',
    fault: 'relay-stuck',
  },
  {
    who: 'landlord far away, tenant without a manual: pale in front, torn seal, may bake until the visit',
    way: `danger.none what.uneven food.one-side fuel.electric since.slowly ${habits} cool-enough.overnight inside.clear element-look.none-seen seal.worn`,
    end: 'stop-seal',
    urgency: 'soon',
    fault: 'gasket',
    check: 'gasket-look',
  },
  {
    who: 'child stood on the door: it hangs and will not shut',
    way: 'danger.none what.door door-shut.gap',
    end: 'stop-door',
    urgency: 'soon',
    fault: 'hinge',
    check: 'door-fit',
  },
  {
    who: 'a towel was in the door',
    way: 'danger.none what.door door-shut.was-open',
    end: 'finish-setting',
    urgency: 'none',
  },
  {
    who: 'the whole range rocks when the door opens',
    way: 'danger.none what.rocks',
    end: 'stop-level',
    urgency: 'soon',
  },
  {
    who: 'hard of sight, a daughter reads: far too hot from one day to the next, no third reading asked',
    way: `${hot('sudden')} thermometer-fault.at-350 first-fault.far-over second-hot.far-over`,
    end: 'stop-too-hot',
    urgency: 'soon',
    fault: 'sensor-displaced',
    check: 'oven-look',
  },
  {
    who: 'couple who bought a used range: the temperature had been adjusted',
    way: `${hot('always')} thermometer-fault.none offset-look-fault.set-back`,
    end: 'finish-zero',
    urgency: 'none',
    fault: 'offset',
    check: 'settings-look',
  },
  {
    who: 'has a thermometer, not yet measured',
    way: `${cool} thermometer.not-yet`,
    end: 'finish-measure',
    urgency: 'none',
  },
  {
    who: 'retired cook whose glass dish burns all pies on the bottom',
    way: 'danger.none what.uneven food.dark-bottom pan.dark',
    end: 'finish-pan',
    urgency: 'none',
    fault: 'normal',
  },
  {
    who: 'knows nothing of the oven and is sure of nothing: a visit, no alarm',
    way: 'danger.none what.unsure fuel-fault.unsure oven-flame-fault.unsure since-fault.unsure cool-enough-fault.unsure wait-reach-fault.cool inside-fault.unsure element-look-fault.unsure seal-fault.unsure thermometer-fault.unsure offset-look-fault.unsure',
    end: 'stop-book',
    urgency: 'soon',
  },
];

describe('people whose oven is too hot, too cool or uneven', () => {
  it('are many and end in many ways', () => {
    expect(situations.length).toBeGreaterThanOrEqual(20);
    expect(new Set(situations.map(({ end }) => end)).size).toBeGreaterThan(15);
  });

  it.each(situations)('$who', expectWalked(GUIDE));
});

const walk = (way: string) => walked(GUIDE, way);

describe('answers it takes', () => {
  it.each([
    ['to be told to turn it off', 2, 'danger.none what.wont-stop', 'stop-runaway'],
    [
      'to be told to wait longer after the beep',
      5,
      'danger.none what.too-cool fuel.electric since.always preheat.at-beep',
      'finish-preheat',
    ],
    [
      'to be told it is normal',
      14,
      `${cool} thermometer.at-350 first.close second-close.close third-close.close`,
      'finish-normal',
    ],
    [
      'to be told to book, hot gas oven',
      14,
      `danger.none what.too-cool fuel.gas-oven oven-flame.blue since.slowly ${habits} cool-enough.warm wait-reach.cool inside.clear element-look.none-seen seal.sound thermometer.none offset-look.at-zero`,
      'stop-book',
    ],
  ])('%s: %i at most', expectAtMost(GUIDE));
});

const bands = ['far-over', 'over', 'close', 'under', 'far-under', 'unsure'] as const;
type Band = (typeof bands)[number];

/** Where three readings should end, whatever their order. */
function meant(all: readonly Band[]): string {
  const count = (band: Band) => all.filter((one) => one === band).length;
  if (count('far-over') > 1) return 'stop-too-hot';
  if (count('close') === 3) return 'finish-normal';
  if (count('over') === 3 || count('under') === 3) return 'offset-set';
  if (count('over') + count('far-over') === 3) return 'stop-book';
  if (count('under') + count('far-under') === 3) return 'stop-book';
  return 'finish-measure';
}

it('reads three readings alike in any order', () => {
  let tried = 0;
  const start = `${cool} thermometer.at-350`;
  for (const one of bands)
    for (const two of bands)
      for (const three of bands) {
        let way = start;
        for (const band of [one, two, three]) {
          const { end } = walk(way);
          if (end.answers.length === 0) break;
          way += ` ${end.id}.${band}`;
        }
        expect(walk(way).end.page, way).toBe(meant([one, two, three]));
        tried += 1;
      }
  expect(tried).toBe(bands.length ** 3);
});

describe('what is said', () => {
  const page = (name: string) => JSON.stringify(textFile('en', GUIDE)[name]);
  it.each([
    ['seal', /whole and springy/],
    ['seal', /Many ovens have none along the bottom/],
    ['stop-seal', /You may bake/],
    ['finish-measure', /cold and empty/],
    ['finish-measure', /20 to 30 minutes\. Stay in the kitchen/],
    ['finish-measure', /three highs and three lows/],
    ['finish-cover', /carbon monoxide/],
  ])('%s: %s', (name, words) => expect(page(name)).toMatch(words));
});

it('no gas oven is told that all is well before its flame was asked for', () => {
  expect(gasFlameFirst(GUIDE)).toBeGreaterThan(5);
});
