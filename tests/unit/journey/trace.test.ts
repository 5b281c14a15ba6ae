/** The one reader of a journey against a slow one, and against journeys worked out by hand. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parseJourney } from '../../../src/address/journey-text.ts';
import { flags, guides, releases } from '../../../src/content/load.ts';
import { facts } from '../../../src/guide/types.ts';
import type { AnswerId, Given, Graph, Journey, NodeId } from '../../../src/guide/types.ts';
import { notAsked, trace } from '../../../src/journey/trace.ts';
import { makeCodebooks } from '../../../src/note/codebook.ts';
import { readSlowly } from '../../support/slow-reader.ts';
import { randomGuide } from '../guide/support/random-guide.ts';
import { realGuide } from '../guide/support/real.ts';
import { makeRandom } from '../note/random.ts';

const SEED = 13;
const guide = realGuide();
const read = (text: string) => trace(guide, parseJourney(text));

/** A journey by chance, mostly of the guide: now and then an answer or a node is another's. */
function chanceJourney(of: Graph, random: ReturnType<typeof makeRandom>): Journey {
  const journey: Given[] = [];
  let at: NodeId = of.start;
  for (let more = random.below(26); more > 0; more -= 1) {
    const node = of.nodes.get(at);
    const edges = [...(node?.answers ?? []), ...of.exits.slice(0, random.below(8) === 0 ? 9 : 0)];
    const edge = edges[random.below(Math.max(1, edges.length))];
    const answer =
      random.below(40) === 0 ? ('nonsense' as AnswerId) : (edge?.id ?? ('x' as AnswerId));
    journey.push({ at: random.below(40) === 0 ? of.start : at, answer });
    at = edge?.to ?? at;
  }
  return journey;
}

function expectSame(of: Graph, journey: Journey, why: string): void {
  const [one, slow] = [trace(of, journey), readSlowly(of, journey)];
  expect(
    {
      answers: one.steps.map(({ node, edge }) => `${node.id}.${edge.id}`),
      end: one.end.id,
      rest: one.rest.length,
      state: one.state,
      heatEnded: one.heatEnded,
      flags: one.flags,
    },
    why,
  ).toEqual({
    answers: slow.answers,
    end: slow.end,
    rest: slow.rest,
    state: slow.state,
    heatEnded: slow.heatEnded,
    flags: slow.flags,
  });
  for (const fact of facts) expect(one.facts.has(fact), `${why}: ${fact}`).toBe(slow.facts(fact));
  const legs = one.legs.flatMap((leg) => leg.steps.map(() => leg.guide as string));
  expect(legs.toSorted(), why).toEqual(slow.guides.toSorted());
}

/** How often each thing that a trace can tell was told: none may be missing. */
function tallyOf(of: Graph, journeys: readonly Journey[]) {
  const traces = journeys.map((journey) => trace(of, journey));
  return {
    open: traces.filter(({ state }) => state === 'open').length,
    over: traces.filter(({ state }) => state !== 'open').length,
    flagged: traces.filter(({ flags }) => flags.length > 0).length,
    astray: traces.filter(({ rest }) => rest.length > 0).length,
  };
}

describe('the one trace says what a slow reader says', () => {
  const random = makeRandom(SEED);

  it(`of random guides (seed ${SEED})`, () => {
    let flagged = 0;
    let heat = 0;
    fc.assert(
      fc.property(randomGuide, fc.nat(), (of, seed) => {
        const own = makeRandom(seed);
        for (let i = 0; i < 12; i += 1) {
          const journey = chanceJourney(of, own);
          expectSame(of, journey, `${JSON.stringify(journey)} (seed ${seed})`);
          flagged += trace(of, journey).flags.length;
          heat += trace(of, journey).heatEnded === undefined ? 0 : 1;
        }
      }),
      { numRuns: 400, seed: SEED },
    );
    expect(flagged).toBeGreaterThan(300);
    expect(heat).toBeGreaterThan(100);
  });

  it(`of every guide (seed ${SEED})`, () => {
    expect(guides().length).toBeGreaterThan(5);
    for (const of of guides()) {
      const journeys = Array.from({ length: 300 }, () => chanceJourney(of, random));
      for (const journey of journeys)
        expectSame(of, journey, `${of.id} ${JSON.stringify(journey)} (seed ${SEED})`);
      for (const [what, count] of Object.entries(tallyOf(of, journeys)))
        expect(count, `${of.id}: ${what}`).toBeGreaterThan(3);
    }
  });

  it(`of every guide of every codebook, with flags and without (seed ${SEED})`, () => {
    expect(releases().length).toBeGreaterThan(3);
    for (const known of [flags(), []])
      for (const { release, guides: frozen } of makeCodebooks(releases(), known).values())
        for (const of of frozen) {
          const journeys = Array.from({ length: 250 }, () => chanceJourney(of, random));
          for (const journey of journeys)
            expectSame(
              of,
              journey,
              `release ${release} ${of.id} ${JSON.stringify(journey)} (seed ${SEED})`,
            );
          expect(tallyOf(of, journeys).flagged > 0, `${release} ${of.id}`).toBe(known.length > 0);
        }
  });
});

describe('a trace', () => {
  it('stands at the start without an answer', () => {
    expect(read('')).toMatchObject({
      ...{ steps: [], rest: [], state: 'open', flags: [], legs: [] },
      end: { id: 'danger' },
    });
  });

  it('lists every node with the answer given there, and its page and track', () => {
    const { steps, end } = read('danger.none~since.never~near-calm.quiet');
    expect(steps.map(({ node, edge }) => [node.page, node.track, edge.id])).toEqual([
      ['danger', 'open', 'none'],
      ['since', 'open', 'never'],
      ['near', 'calm', 'quiet'],
    ]);
    expect([end.id, end.page, end.track]).toEqual(['display-calm', 'display', 'calm']);
  });

  it('ends with a danger answer, from any question or step', () => {
    expect(read('danger.none~since.running~still-cleaning.fire')).toMatchObject({
      ...{ rest: [], state: 'stop' },
      end: { id: 'stop-fire', urgency: 'emergency' },
    });
  });

  it('gives a page’s own "unsure" and not the danger question’s', () => {
    expect(read('danger.unsure').end.id).toBe('stop-unsure');
    expect(read('danger.none~since.unsure').end.id).toBe('near');
  });

  it.each([
    ['danger.maybe', 0, 'danger'],
    ['since.over-4', 0, 'danger'],
    ['danger.none~display.time', 1, 'since'],
    // Nothing follows a stop, not even another danger.
    ['danger.fire~stop-fire.gas', 1, 'stop-fire'],
  ])('stops where %s goes astray, the rest told apart', (text, fits, end) => {
    const journey = parseJourney(text);
    expect(read(text)).toMatchObject({ rest: journey.slice(fits), end: { id: end } });
  });

  it('knows how long ago the heat stopped, until something heats again', () => {
    const way =
      'danger.none~since.1-to-4~near.quiet~display.time~off-once.same~controls.buttons~try-door.stuck~panel.ready~breaker-off.done~breaker-on.stayed~listen.hum-click~try-again.stuck~inside.nothing~forced.no~last-gate.all-true';
    expect(read(way)).toMatchObject({ rest: [], heatEnded: 60, end: { heat: true } });
    expect(read(`${way}~short-clean.ended`)).toMatchObject({
      ...{ rest: [], heatEnded: undefined },
      end: { id: 'cool-again' },
    });
  });

  it('tells the legs of a journey that went over into another guide', () => {
    const of = guides().find(({ id }) => (id as string) === 'burner');
    if (!of) throw new Error('no burner');
    const traced = trace(
      of,
      parseJourney('danger.none~what.error~error-shows/error-write.written'),
    );
    const { legs, end, flags } = traced;
    expect(legs.map((leg) => [leg.guide, leg.steps.length])).toEqual([
      ['burner', 2],
      ['error-shows', 1],
    ]);
    expect([end.guide, flags]).toEqual(['error-shows', ['error-seen']]);
    const asked = new Set(notAsked(of, traced).map((node) => String(node.guide)));
    expect([...asked].toSorted()).toEqual(['burner', 'error-shows']);
  });

  it('leaves out of "not asked" what was, by its sentences', () => {
    const traced = read('danger.none~since.over-4');
    const names = notAsked(guide, traced).map(({ sentences }) => String(sentences));
    expect(names).not.toContain('since');
    expect(names).toContain('display');
    // Nobody is asked anything at an end.
    expect(names).not.toContain('stop-fire');
    expect(new Set(names).size).toBe(names.length);
  });
});
