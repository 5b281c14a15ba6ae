import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { qualifyOther } from '../../../src/guide/ids.ts';
import { joinGuides, unresolved } from '../../../src/guide/join.ts';
import type { HandOver, GuideSource } from '../../../src/guide/join.ts';
import { prove } from '../../../src/proof/prove.ts';
import type { Guide, GuideId, GuideNode, NodeId } from '../../../src/guide/types.ts';
import { oracle } from './support/oracle.ts';
import { randomGuide } from './support/random-guide.ts';

const RUNS = 1600;
const SEED = 20261126;
const OTHER = 'other';

/** The guide without nodes that no answer leads to: a joined guide has no such nodes of others. */
function inReach(guide: Guide): Guide {
  const reached = new Set<NodeId>([guide.start, ...guide.exits.map(({ to }) => to)]);
  for (const id of reached)
    for (const { to } of guide.nodes.get(id)?.answers ?? []) reached.add(to);
  // A rule speaks of one guide's pages; see rules.test.ts for rules over a joint.
  return {
    ...guide,
    rules: [],
    nodes: new Map([...guide.nodes].filter(([id]) => reached.has(id))),
  };
}

/** A random guide's page or end by its number, -1 for the danger question and its stops. */
function placeOf(id: string): number {
  return /^n\d+$/.test(id) ? Number(id.slice(1)) : -1;
}

function partOf(guide: Guide, nodes: readonly GuideNode[], id: string): GuideSource {
  const here = new Set<string>(nodes.map((node) => node.id));
  const handOvers: HandOver[] = [];
  const leave = (node: GuideNode): GuideNode => ({
    ...node,
    answers: node.answers.map((answer) => {
      if (here.has(answer.to) || placeOf(answer.to) < 0) return answer;
      const way = { node: node.id, answer: answer.id, guide: id === OTHER ? 'first' : OTHER };
      const handOver = {
        ...way,
        target: answer.to,
        track: undefined,
        place: { line: 1, column: 1 },
      };
      handOvers.push(handOver);
      return { ...answer, to: unresolved(handOver) as NodeId };
    }),
  });
  return {
    file: `${id}.yaml`,
    guide: {
      ...guide,
      id: id as GuideId,
      nodes: new Map(nodes.map((node) => [node.id, { ...leave(node), guide: id as GuideId }])),
    },
    entries: [...here],
    handOvers,
  };
}

/** One guide cut in two: all pages and ends from a number on are another guide's. */
function cut(guide: Guide, from: number): [GuideSource, GuideSource] {
  const nodes = [...guide.nodes.values()];
  const both = nodes.filter(({ id }) => placeOf(id) < 0);
  const start = both.map((node) =>
    node.id === guide.start
      ? { ...node, answers: node.answers.filter(({ to }) => placeOf(to) < 0) }
      : node,
  );
  const before = nodes.filter(({ id }) => placeOf(id) < from);
  const after = nodes.filter(({ id }) => placeOf(id) >= from);
  return [partOf(guide, before, 'first'), partOf(guide, [...start, ...after], OTHER)];
}

describe('a guide cut in two and joined again', () => {
  it(`is what it was: verdicts and counts, over ${RUNS} random guides`, () => {
    const tally = { crossed: 0, circles: 0, unsafe: 0, safe: 0 };
    fc.assert(
      fc.property(randomGuide, fc.integer({ min: 1, max: 4 }), (drawn, from) => {
        const whole = inReach(drawn);
        const [first, second] = cut(whole, from);
        const joined = joinGuides([first, second]);
        if (!joined.ok) {
          // An answer led back over the cut.
          expect(joined.error.map(({ code }) => code)).toEqual(['guide-circle']);
          expect(first.handOvers.length * second.handOvers.length).toBeGreaterThan(0);
          tally.circles += 1;
          return;
        }
        const guide = joined.value[0];
        if (!guide) throw new Error('no guide');
        if (first.handOvers.length > 0) tally.crossed += 1;
        expect([...guide.nodes.keys()].toSorted()).toEqual(
          [...whole.nodes.keys()]
            .map((id) => (placeOf(id) < from ? id : qualifyOther(OTHER, id)))
            .toSorted(),
        );
        const [opinion, proof] = [oracle(whole), prove(guide)];
        const failing = proof.verdicts.filter(({ holds }) => !holds).map(({ id }) => id);
        if (opinion.loops) expect(failing).toContain('journeys-end');
        else {
          expect(failing.toSorted()).toEqual([...opinion.broken].toSorted());
          expect(Number(proof.journeys.all)).toBe(opinion.all);
          expect(proof.journeys.longest).toBe(opinion.longest);
        }
        tally[proof.holds ? 'safe' : 'unsafe'] += 1;
      }),
      { numRuns: RUNS, seed: SEED },
    );
    for (const [kind, count] of Object.entries(tally)) expect(count, kind).toBeGreaterThan(5);
  });
});
