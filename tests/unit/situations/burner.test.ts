/**
 * Described people with a burner that gives trouble. What should come first, and after how many
 * answers at most, is common practice, no source.
 */
import { describe, expect, it } from 'vitest';
import sentences from '../../../content/text/en/burner.json' with { type: 'json' };
import { guides } from '../../../src/content/load.ts';
import { expectAtMost, expectWalked } from './walked.ts';
import type { Situation } from './walked.ts';

/** Asked of a gas burner that does not light. */
const unlit = 'danger.none what.no-light gas-off.done';
/** The flame was bad; tracks name copies of pages. */
const flame = 'danger.none what.flame gas-off-flame.done';
const reset = 'panel.ready breaker-look.on breaker-off.done breaker-on.stayed';

interface Told extends Situation {
  /** What the page it ends at says. */
  readonly said?: RegExp;
}

const situations: readonly Told[] = [
  {
    who: 'cook who washed the caps: one burner clicks and does not light; set again, it does',
    way: `${unlit} spark.clicks which.one near.cool look-gas.crooked cap-set.sits trial.lights`,
    end: 'finish-burner',
    urgency: 'none',
    fault: 'cap-off',
    check: 'burner-look',
    said: /as usual/u,
  },
  {
    who: 'student whose burner looks fine: the cap is set once before anybody comes',
    way: `${unlit} spark.clicks which.one near.cool look-gas.fine cap-set.sits trial.no-flame`,
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'electrode',
  },
  {
    who: 'family whose milk boiled over: it clicks with all knobs off, left overnight',
    way: 'danger.none what.keeps-clicking click.off near-wet.warm wait-wet.cool dry-wet.overnight',
    end: 'finish-night',
    urgency: 'none',
    fault: 'moisture',
    said: /note code/u,
  },
  {
    who: 'cleaner in an office kitchen: still clicking at Off after it has dried',
    way: 'danger.none what.keeps-clicking click.off near-wet.cool dry-wet.clicks',
    end: 'stop-clicks',
    urgency: 'soon',
    fault: 'ignition-switch',
    said: /If the breaker panel is dry, cool and quiet, turn the range's breaker off/u,
  },
  {
    who: 'new apartment, all burners light and go on clicking since the range was set in',
    way: 'danger.none what.keeps-clicking click.lit near.cool look-gas.fine cap-set.sits trial.clicks',
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'ground',
    details: { repairs: 'yes' },
  },
  {
    who: 'hard of hearing, saw no spark at any burner since a storm; the clock works',
    way: `${unlit} spark.silent power-silent.yes which-silent.all`,
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'spark-module',
    check: 'spark-look',
    details: { storm: 'yes', burners: 'none' },
  },
  {
    who: 'gas range dark after the toaster tripped the kitchen outlet: Reset brings it back',
    way: `${unlit} spark.silent power-silent.dark no-heat/house-power-dark.outlets no-heat/gfci-dark.back`,
    end: 'no-heat/finish-watch',
    urgency: 'none',
  },
  {
    who: 'old range with pilot flames, one has gone out',
    way: `${unlit} spark.pilot`,
    end: 'stop-burner',
    urgency: 'soon',
    said: /Do not light a burner with a match/u,
  },
  {
    who: 'tenant who still smells gas after five minutes',
    way: 'danger.none what.no-light gas-off.smells',
    end: 'stop-gas',
    urgency: 'emergency',
  },
  {
    who: 'not sure if the kitchen smells: no alarm is made of it',
    way: 'danger.none what.no-light gas-off.unsure',
    end: 'stop-burner',
    urgency: 'soon',
    said: /If you smell gas, get out/u,
  },
  {
    who: 'cabin on propane, nothing lights, the tank may be empty',
    way: `${unlit} spark.clicks which.all gas-else.tank`,
    end: 'stop-gas-supply',
    urgency: 'today',
    fault: 'gas-shut',
  },
  {
    who: 'street works: nothing on gas works',
    way: `${unlit} spark.clicks which.all gas-else.none`,
    end: 'stop-gas-supply',
    urgency: 'today',
    fault: 'gas-shut',
  },
  {
    who: 'moved in last week, all burners click, the water heater is hot',
    way: `${unlit} spark.clicks which.all gas-else.new`,
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'gas-shut',
    details: { repairs: 'yes', burners: 'none' },
  },
  {
    who: 'shared house, two with a headache, flame yellow',
    way: `${flame} flame-how-flame.yellow well.sick`,
    end: 'stop-co',
    urgency: 'emergency',
  },
  {
    who: 'range run on the other gas before: all flames yellow, everyone is well',
    way: `${flame} flame-how-flame.yellow well.fine tips.new`,
    end: 'stop-flame',
    urgency: 'today',
    fault: 'air-mix',
    check: 'flame-look',
    details: { repairs: 'yes', age: 'under-5' },
  },
  {
    who: 'father with a cold in the house, not sure about the air: asked on, not sent out',
    way: `${flame} flame-how-flame.yellow well.unsure tips.unsure`,
    end: 'stop-burner',
    urgency: 'soon',
    said: /carbon monoxide alarm/u,
  },
  {
    who: 'asthmatic with a humidifier by the range: orange flickers, gone without it',
    way: `${flame} flame-how-flame.yellow well.fine tips.humid near.cool look-gas.fine cap-set.sits trial.lights`,
    end: 'finish-burner',
    urgency: 'none',
    fault: 'normal',
  },
  {
    who: 'flame lifts off and roars',
    way: `${flame} flame-how-flame.lifts`,
    end: 'stop-flame',
    urgency: 'today',
  },
  {
    who: 'one burner puffs softly since it was scrubbed: dried, set, tried once',
    way: `${flame} flame-how-flame.late late-how.cleaned near.cool look-gas.crooked cap-set.sits trial.lights`,
    end: 'finish-burner',
    urgency: 'none',
    fault: 'cap-off',
  },
  {
    who: 'the same, and it still lights late at the one try',
    way: `${flame} flame-how-flame.late late-how.cleaned near.cool look-gas.wet dry.dry trial.late`,
    end: 'stop-late',
    urgency: 'today',
  },
  {
    who: 'two burners light with a bang',
    way: `${unlit} spark.late late-how.other`,
    end: 'stop-late',
    urgency: 'today',
  },
  {
    who: 'not sure what is wrong with a gas burner, but it does not light',
    way: 'danger.none what.unsure kind.gas-unlit gas-off.done spark.unsure which.one near.cool look-gas.greasy dry.baked',
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'ports-clogged',
  },
  {
    who: 'landlord’s kitchen lined with foil around the gas burners',
    way: 'danger.none what.foil foil-at.gas-top near-foil.cool foil-gas-foil.out cap-set.sits trial.lights',
    end: 'finish-burner',
    urgency: 'none',
    fault: 'foil-gas',
    check: 'burner-look',
    said: /Do not put foil on or near a burner/u,
  },
  {
    who: 'foil baked onto a gas top',
    way: 'danger.none what.foil foil-at.gas-top near-foil.cool foil-gas-foil.stuck',
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'foil-gas',
  },
  {
    who: 'grandfather with loose foil in the drip pan: it stays there, that burner stays off',
    way: 'danger.none what.foil foil-at.coil',
    end: 'stop-coil-foil',
    urgency: 'soon',
    fault: 'foil-electric',
    said: /Do not reach under the coil/u,
  },
  {
    who: 'foil touches the coil',
    way: 'danger.none what.foil foil-at.touches',
    end: 'stop-element',
    urgency: 'today',
    fault: 'foil-electric',
    said: /turn the range's breaker off/u,
  },
  {
    who: 'night shift: one coil glows bright in one spot',
    way: 'danger.none what.element el-kind.coil el-how.spot',
    end: 'stop-element',
    urgency: 'today',
    fault: 'element',
    check: 'element-ohms',
  },
  {
    who: 'coil that comes and goes with the pan, sits loose',
    way: 'danger.none what.element el-kind.coil el-how.pan near-el.cool look-el.loose',
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'element-socket',
    check: 'socket-look',
  },
  {
    who: 'new glass top that goes on and off and cooks well',
    way: 'danger.none what.element el-kind.glass-top el-how.cycles',
    end: 'finish-normal',
    urgency: 'none',
    fault: 'normal',
    check: 'cookware',
  },
  {
    who: 'glass top still warm after half an hour, but less',
    way: 'danger.none what.element el-kind.glass-top el-how.weak el-which.one near-el.warm wait-el.less',
    end: 'finish-night',
    urgency: 'none',
  },
  {
    who: 'glass top as hot as before with its knob at Off',
    way: 'danger.none what.element el-kind.glass-top el-how.weak el-which.one near-el.warm wait-el.no-less',
    end: 'stop-runaway',
    urgency: 'today',
    fault: 'heat-switch',
  },
  {
    who: 'wheelchair user who cannot reach the panel: all coils just warm',
    way: 'danger.none what.element el-kind.coil el-how.weak el-which.all power-el.yes panel.cannot',
    end: 'stop-book',
    urgency: 'soon',
    fault: 'supply-leg',
    check: 'breaker-set',
  },
  {
    who: 'half-tripped breaker: all burners back after the reset',
    way: `danger.none what.element el-kind.coil el-how.weak el-which.all power-el.yes ${reset} after-reset.normal`,
    end: 'finish-watch',
    urgency: 'none',
  },
  {
    who: 'toddler held the lock button of a glass top: all burners cold',
    way: 'danger.none what.element el-kind.glass-top el-how.cold el-which.all power-el.lock control-lock.went-off',
    end: 'finish-lock',
    urgency: 'none',
  },
  {
    who: 'newlyweds with copper pans on an induction top',
    way: 'danger.none what.induction pan.works',
    end: 'finish-normal',
    urgency: 'none',
    fault: 'wrong-pan',
    check: 'cookware',
    said: /magnet/u,
  },
  {
    who: 'induction top, right pan, still nothing after the reset; error is copied',
    way: `danger.none what.induction pan.no-help off-once.same ${reset} after-reset.error error-after.other`,
    end: 'stop-error',
    urgency: 'soon',
    fault: 'induction-module',
  },
  {
    who: 'induction top with letters on the display, gone with Off',
    way: 'danger.none what.induction pan.error error-write-shown.written off-once-shown.changed',
    end: 'finish-watch',
    urgency: 'none',
  },
  {
    who: 'dropped a pot on the glass top',
    way: 'danger.none what.cracked',
    end: 'stop-glass',
    urgency: 'today',
    fault: 'glass-top',
  },
  {
    who: 'coil that keeps heating with its knob at Off',
    way: 'danger.none what.wont-turn-off stays-on.electric-on',
    end: 'stop-runaway',
    urgency: 'today',
    fault: 'heat-switch',
  },
  {
    who: 'gas knob broken, the flame stays on: out, the flame left alone, no breaker',
    way: 'danger.none what.wont-turn-off stays-on.gas-on',
    end: 'stop-gas-on',
    urgency: 'emergency',
    fault: 'surface-valve',
    said: /let it burn/u,
  },
  {
    who: 'coil with one heat only, full',
    way: 'danger.none what.wont-turn-off stays-on.full',
    end: 'stop-burner',
    urgency: 'soon',
    fault: 'heat-switch',
  },
  {
    who: 'not sure if it turns off: no alarm is made of it',
    way: 'danger.none what.wont-turn-off stays-on.unsure',
    end: 'stop-burner',
    urgency: 'soon',
  },
];

describe('people with a burner that gives trouble', () => {
  it('are many and end in many ways', () => {
    expect(situations.length).toBeGreaterThanOrEqual(40);
    expect(new Set(situations.map(({ end }) => end)).size).toBeGreaterThan(15);
  });

  it.each(situations.map((one) => [one.who, one] as const))('%s', (_, one) => {
    expectWalked('burner')(one);
    if (one.said)
      expect(JSON.stringify(sentences[one.end as keyof typeof sentences])).toMatch(one.said);
  });
});

/** The guide's pages, as compiled. */
function pages() {
  const guide = guides().find(({ id }) => String(id) === 'burner');
  if (!guide) throw new Error('no burner');
  return [...guide.nodes.values()].filter((node) => String(node.guide) === 'burner');
}

describe('answers it takes', () => {
  it.each([
    ['to be told to wait', 5, 'danger.none what.foil foil-at.gas-top near-foil.warm', 'wait'],
    [
      'to clear a lock',
      5,
      'danger.none what.induction pan.lock control-lock.went-off',
      'finish-lock',
    ],
    [
      'to clear a hung induction top',
      12,
      `danger.none what.induction pan.no-help off-once.same ${reset} after-reset.normal`,
      'finish-watch',
    ],
    [
      'to be told to book',
      14,
      'danger.none what.unsure kind.gas-unlit gas-off.done spark.silent power-silent.yes which-silent.one near.warm wait.cool look-gas.foil foil-gas.out cap-set.sits trial.no-flame',
      'stop-burner',
    ],
  ])('%s: %i at most', expectAtMost('burner'));
});

describe('what each page may lead to', () => {
  const flagOf = (page: string, answer: string) =>
    pages()
      .find((node) => node.page === page)
      ?.answers.find(({ id }) => String(id) === answer)?.flag;

  it.each([
    ['a late flame', 'flame-how', 'late', 'burner-late-light'],
    ['a late flame, told at once', 'spark', 'late', 'burner-late-light'],
    ['a late flame at the try', 'trial', 'late', 'burner-late-light'],
    ['a yellow flame', 'flame-how', 'yellow', 'yellow-flame'],
    ['foil on a coil', 'foil-at', 'touches', 'on-part'],
    ['a burned spot', 'look-el', 'marked', 'element-marked'],
    ['a cracked top', 'what', 'cracked', 'cracked-glass'],
    ['a cracked top seen later', 'look-el', 'cracked', 'cracked-glass'],
    ['a burner that stays on', 'stays-on', 'electric-on', 'burner-on'],
    ['a flame nobody saw', 'flame-how', 'unsure', undefined],
  ])('%s raises its own flag', (_, page, answer, flag) => {
    expect(flagOf(page, answer)).toBe(flag);
  });

  it('names the breaker panel wherever it names a breaker', () => {
    const told = Object.entries(sentences).filter(([, page]) =>
      JSON.stringify(page).includes("turn the range's breaker off"),
    );
    expect(told.length).toBeGreaterThan(1);
    for (const [page, words] of told)
      expect(JSON.stringify(words), page).toMatch(
        /If the breaker panel is dry, cool and quiet, turn the range's breaker off/u,
      );
  });

  it('says nothing of a breaker where gas is the trouble', () => {
    for (const page of ['foil-gas', 'gas-off', 'stop-burner', 'finish-burner'] as const)
      expect(JSON.stringify(sentences[page]), page).not.toMatch(/breaker/u);
    expect(sentences['stop-gas-on'].now.join(' ')).not.toMatch(/breaker/u);
  });
});
