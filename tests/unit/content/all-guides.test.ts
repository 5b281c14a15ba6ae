/** What must hold in every guide alike, beside what the proof holds of each. */
import { describe, expect, it } from 'vitest';
import { finder, guideText, guides, models, textFile } from '../../../src/content/load.ts';
import { ownNodes } from '../../../src/guide/ids.ts';
import { isRecord } from '../../../src/guide/shape.ts';

const all = guides();
const pages = all.flatMap((guide) => {
  const texts = guideText('en', guide);
  return ownNodes(guide).map((node) => {
    const text = texts[node.sentences];
    if (!text) throw new Error(`${guide.id}/${node.sentences}`);
    return { guide, node, text };
  });
});

/**
 * Answers that end in a stop for today and tell nothing of what is broken in the range: the house's
 * wiring or supply, a burned person, trouble that the guide itself made.
 */
const NO_EVIDENCE = new Set([
  'panel.bad',
  'panel.tripped',
  'breaker-look.bad',
  'breaker-off.bad',
  'breaker-on.bad',
  'house-power.part',
  'gfci.again',
  'wait-reach.no-less',
  // Foil is not what keeps a self-clean from starting.
  'foil-where.touches',
]);

describe('all guides', () => {
  it('count every answer that ends in a stop for today as evidence, or it is exempt by name', () => {
    const urgent = pages.flatMap(({ guide, node }) =>
      node.answers
        .filter(({ id }) => node.id !== guide.start && String(id) !== 'unsure')
        .filter(({ to }) => ['today', 'emergency'].includes(guide.nodes.get(to)?.urgency ?? 'none'))
        .map(({ id }) => ({
          guide: String(guide.id),
          page: String(node.sentences),
          id: String(id),
        })),
    );
    expect(urgent.length).toBeGreaterThan(20);
    const unheard = urgent.filter(({ guide, page, id }) => {
      const tables = models()[guide]?.evidence ?? [];
      // A guide that is no complaint of the model's ranks nothing.
      const ranks = tables.find(({ key }) => key === 'complaint')?.answers.includes(guide);
      const table = tables.find(({ key }) => [page, `${guide}/${page}`].includes(key));
      return ranks && !table?.answers.includes(id) && !NO_EVIDENCE.has(`${page}.${id}`);
    });
    expect(unheard).toEqual([]);
  });

  it('say of the breaker what their stops mean', () => {
    const stops = pages.filter(({ node }) => node.kind === 'stop');
    expect(stops.length).toBeGreaterThan(50);
    for (const { node, text } of stops) {
      const now = text.now?.join(' ') ?? '';
      if (node.breakerStaysOff) expect(now, node.id).toMatch(/breaker off/);
      if (node.breakerStaysOff) expect(now, node.id).not.toMatch(/leave the range's breaker on/i);
    }
  });

  it('say "as usual" and "you are done" only where the proof holds that all is well', () => {
    const finishes = pages.filter(({ node }) => node.kind === 'finish');
    expect(finishes.filter(({ node }) => node.done).length).toBeGreaterThan(10);
    for (const { node, text } of finishes) {
      const said = [text.title, ...(text.lines ?? [])].join(' ');
      if (/as usual|you are done/i.test(said)) expect(node.done, node.id).toBe(true);
    }
  });

  it('name the breaker panel and the range’s breaker in full', () => {
    const said = pages.flatMap(({ text }) =>
      [text.title, ...(text.help ?? []), ...(text.lines ?? []), ...(text.now ?? [])].map(String),
    );
    expect(said.length).toBeGreaterThan(500);
    expect(said.filter((one) => /\bthat panel\b|\bits breaker\b/i.test(one))).toEqual([]);
  });
});

/** What callers say, and where they should be led; the trade's everyday, no source. */
const callers: readonly (readonly [string, saying: string, guide: string])[] = [
  ['the door won’t open after the self-clean', 'door-locked', 'door-locked'],
  ['a gas burner clicks, no flame', 'no-light', 'burner'],
  ['the igniter keeps clicking after I turn it off', 'keeps-clicking', 'burner'],
  ['the flame is small on one burner', 'flame', 'burner'],
  ['flames are yellow since the new tank', 'flame', 'burner'],
  ['the pilot is out', 'no-light', 'burner'],
  ['the front coil is dead', 'element', 'burner'],
  ['a burner won’t turn off, or only runs on high', 'burner-stays-on', 'burner'],
  ['the glass top cracked', 'cracked-top', 'burner'],
  ['induction says there is no pan', 'induction', 'burner'],
  ['all burners on top are dead', 'element', 'burner'],
  ['the oven takes an hour to preheat', 'slow', 'no-heat'],
  ['the bottom burns and the top is raw', 'bakes-badly', 'wrong-temperature'],
  ['the oven won’t turn off', 'wont-turn-off', 'wrong-temperature'],
  ['the broiler doesn’t work', 'broiler', 'no-heat'],
  ['the breaker trips when I bake', 'trips', 'no-heat'],
  ['the oven light is dead', 'lamp', 'something-else'],
  ['the door won’t close, the hinge is bent', 'door-gap', 'wrong-temperature'],
  ['the drawer smells of plastic', 'smell', 'melted-smoke'],
  ['the clock blinks and the buttons are dead', 'buttons', 'error-shows'],
  ['it beeps and won’t stop', 'beeps', 'error-shows'],
  ['a fan runs on after I turn it off', 'fan', 'something-else'],
  ['a smell during the first self-clean', 'clean-smoke', 'melted-smoke'],
  ['the range rocks', 'none', 'something-else'],
];

describe('the first page', () => {
  it.each(callers)('has a home in two taps for: %s', (_, saying, guide) => {
    const found = finder().groups.flatMap(({ sayings }) => sayings);
    expect(found.find(({ id }) => id === saying)?.guide).toBe(guide);
    const { sayings } = textFile('en', 'guides');
    expect(isRecord(sayings) && sayings[saying]).toEqual(expect.any(String));
  });

  it('names the danger of an oven that will not turn off and of cracked glass at once', () => {
    const dangers = all[0]?.exits.map(({ id }) => String(id));
    expect(dangers).toEqual(expect.arrayContaining(['runaway', 'glass']));
  });
});

it.each([
  'finish-lock',
  'finish-clear',
  'something-else/finish-fan',
  'finish-offset',
  'finish-zero',
])('warns of no injury at %s, where only the range could suffer (ANSI Z535: NOTICE)', (id) => {
  const ends = pages.filter(({ guide, node }) => `${guide.id}/${node.id}`.endsWith(id));
  expect(ends).not.toEqual([]);
  for (const { guide, node } of ends) expect(node.caution, guide.id).toBe('notice');
});
