/**
 * How long a wait is told to be, on the page and at the desk: for every guide, every track and
 * every answer that says when the heat ended. What the answers stand for is written down here once
 * more, and not read from the model.
 */
import { describe, expect, it } from 'vitest';
import { formatJourney, parseJourney } from '../../../src/address/journey-text.ts';
import { guides } from '../../../src/content/load.ts';
import { parseId } from '../../../src/guide/ids.ts';
import type { Given, Guide, GuideNode, Journey, NodeId } from '../../../src/guide/types.ts';
import { heatEndedAs } from '../../../src/journey/heat.ts';
import { trace } from '../../../src/journey/trace.ts';
import { clock, waitMinutes } from '../../../src/journey/wait.ts';
import { codebookGuide } from '../../../src/note/codebook.ts';
import { heatTold } from '../../../src/site/heat-told.ts';
import { codebookOf, working } from '../note/codebooks.ts';

/** Minutes left of the slowest oven's 240, by what the caller said of the locked door's heat. */
const LEFT: Readonly<Record<string, number>> = {
  'since.running': 240,
  'since.under-1': 240,
  'since.1-to-4': 180,
  'since.over-4': 15,
  'since.overnight': 15,
  'since.outage': 240,
  'since.never': 240,
  'since.unsure': 240,
  'still-cleaning.ended': 240,
  'still-cleaning.turned-off': 240,
  'still-cleaning.error': 240,
  'still-cleaning.unsure': 240,
};
const SLOWEST = 240;
/** Of the slowest oven, until it can be reached into. */
const SLOWEST_REACH = 395;

/** The shortest journeys from a node to every node behind it, by breadth. */
function waysFrom(guide: Guide, from: NodeId): ReadonlyMap<NodeId, Journey> {
  const ways = new Map<NodeId, Journey>([[from, []]]);
  // A Map's iterator also visits what is added while it runs.
  for (const [id, way] of ways)
    for (const { id: answer, to } of guide.nodes.get(id)?.answers ?? [])
      if (!ways.has(to)) ways.set(to, [...way, { at: id, answer }]);
  return ways;
}

interface Case {
  readonly name: string;
  readonly guide: Guide;
  readonly journey: Journey;
  readonly wait: GuideNode;
  readonly left: number;
}

/** The locked door's questions of when the heat ended, on whatever track. */
const asks = (node: GuideNode): boolean =>
  (node.guide as string) === 'door-locked' && ['since', 'still-cleaning'].includes(node.page);

const cases = guides().flatMap((guide): Case[] => {
  const start = waysFrom(guide, guide.start);
  return [...guide.nodes.values()].filter(asks).flatMap((since) =>
    since.answers.flatMap((answer) => {
      const told: Given = { at: since.id, answer: answer.id };
      return [...waysFrom(guide, answer.to)].flatMap(([id, way]): Case[] => {
        const wait = guide.nodes.get(id);
        const before = start.get(since.id);
        if (wait?.timer?.kind !== 'cooling' || !before) return [];
        const journey = [...before, told, ...way];
        const again = way.some(({ at }) => parseId(at).name.startsWith('short-clean'));
        const name = `${guide.id} #${formatJourney(journey)}`;
        return [
          {
            name,
            guide,
            journey,
            wait,
            left: again ? SLOWEST : (LEFT[`${since.page}.${answer.id}`] ?? -1),
          },
        ];
      });
    }),
  );
});

/** As the page of the wait works it out, of what the build has put on it and the address. */
function onPage({ guide, journey, wait }: Case): number {
  const own = guides().find(({ id }) => id === wait.guide) ?? expect.unreachable();
  const node = own.nodes.get(parseId(wait.id).name as NodeId) ?? expect.unreachable();
  const ended = heatEndedAs(
    heatTold(guides(), own, node),
    guide.id,
    parseJourney(formatJourney(journey)),
  );
  return waitMinutes(node.timer ?? expect.unreachable(), ended);
}

/** As the desk does, of its codebook. */
function atDesk({ guide, journey, wait }: Case): number {
  const frozen = codebookGuide(codebookOf(working), guide.id) ?? expect.unreachable();
  const { end, rest, heatEnded } = trace(frozen, journey);
  expect([end.id, rest]).toEqual([wait.id, []]);
  return waitMinutes(wait.timer ?? expect.unreachable(), heatEnded);
}

describe('a wait for an oven to cool', () => {
  it('is tried from every answer of the locked door that may say it, on each track', () => {
    const of = new Set(cases.map(({ guide }) => String(guide.id)));
    expect([...of]).toEqual(['door-locked']);
    const said = cases.flatMap(({ journey }) => journey.map(({ at, answer }) => `${at}.${answer}`));
    expect(said).toEqual(expect.arrayContaining(Object.keys(LEFT)));
    const waits = new Set(cases.map(({ wait }) => `${wait.page} ${String(wait.track)}`));
    expect([...waits].toSorted()).toEqual([
      ...['cool-again open', 'wait calm', 'wait cold', 'wait open'],
    ]);
    expect(cases.length).toBeGreaterThan(20);
  });

  it.each(cases.map((one) => [one.name, one] as const))('%s', (_, one) => {
    expect({ page: onPage(one), desk: atDesk(one) }).toEqual({ page: one.left, desk: one.left });
  });

  it('is as long as the slowest oven takes where nobody was asked', () => {
    const others = guides().filter(({ id }) => (id as string) !== 'door-locked');
    const met = others.flatMap((guide) => {
      const ways = waysFrom(guide, guide.start);
      return [...guide.nodes.values()].flatMap((wait) => {
        if (wait.timer?.kind !== 'cooling') return [];
        const journey = ways.get(wait.id) ?? expect.fail(wait.id);
        const left = wait.page === 'wait-reach' ? SLOWEST_REACH : SLOWEST;
        const one = { name: guide.id, guide, journey, wait, left };
        expect([onPage(one), atDesk(one)], `${guide.id} ${wait.id}`).toEqual([left, left]);
        return [`${guide.id} ${wait.page}`];
      });
    });
    // The waits of the guides' own, and the locked door's that they lead to.
    expect(met).toEqual(
      expect.arrayContaining([
        ...['clean-wont-start wait-reach', 'melted-smoke wait-reach', 'no-heat wait-reach'],
        ...['wrong-temperature wait-reach', 'no-heat wait', 'clean-wont-start wait'],
        ...['error-shows wait', 'melted-smoke wait'],
      ]),
    );
  });
});

describe('the length of a wait', () => {
  const cooling = { kind: 'cooling', minutes: [30, 240] } as const;

  it('is never told too short', () => {
    expect(waitMinutes({ kind: 'fixed', minutes: [30, 30] }, 240)).toBe(30);
    expect(waitMinutes(cooling, undefined)).toBe(240);
    expect(waitMinutes(cooling, 60)).toBe(180);
    expect(waitMinutes(cooling, 1440)).toBe(15);
    expect(waitMinutes({ kind: 'cooling', minutes: [5, 10] }, 240)).toBe(10);
  });

  it('is shown in minutes and hours', () => {
    expect([clock(-5), clock(0.2), clock(65), clock(3600)]).toEqual([
      ...['0:00', '0:01'],
      ...['1:05', '1:00:00'],
    ]);
  });
});
