import { facts } from '../guide/types.ts';
import type { Fact, GuideNode } from '../guide/types.ts';
import { bit, isEnd } from './graph.ts';
import type { Graph } from './graph.ts';
import { journeyWith, reached } from './property.ts';
import type { Evidence, Failure, Property } from './property.ts';

/** What must never have been the case, and what must be the case, where heat can start. */
const never: readonly Fact[] = ['error-seen', 'inside-something', 'door-forced'];
const always: readonly Fact[] = ['inside-nothing', 'door-not-forced', 'cooled'];

/** A key starts a whole cycle, so someone must have promised to stay; a knob is turned back. */
const STAY: Fact = 'stay-promised';

/** Facts and their contraries: who asks for one has to settle which it is. */
const pairs: readonly (readonly [Fact, Fact])[] = [
  ['inside-nothing', 'inside-something'],
  ['door-not-forced', 'door-forced'],
];

function atHeat({ flow, searches }: Evidence, node: GuideNode, index: number): Failure[] {
  const holding = (fact: Fact, held: boolean) => () => searches.holding(index, fact, held);
  const despite = never.filter((fact) => (flow.may[index] ?? 0) & bit(fact));
  const needed = node.action === 'press-key' ? [...always, STAY] : always;
  const without = needed.filter((fact) => !((flow.must[index] ?? 0) & bit(fact)));
  return [
    ...despite.map((fact) => ({
      fault: { code: 'heat-despite' as const, node: node.id, fact },
      journey: holding(fact, true),
    })),
    ...without.map((fact) => ({
      fault: { code: 'heat-without' as const, node: node.id, fact },
      journey: holding(fact, false),
    })),
  ];
}

function isFact(flag: string | undefined): flag is Fact {
  return facts.some((fact) => fact === flag);
}

/** The node's own answers after which the guide goes on. */
function goingOn(graph: Graph, node: GuideNode): GuideNode['answers'] {
  return node.answers.filter(({ to }) => !isEnd(graph.guide.nodes.get(to)));
}

/**
 * The guide's account of the facts is only worth what the answers tell: after heat each
 * answer says whether the oven is hot again, who asks what is inside or whether the door
 * was forced settles it with every answer, who tells staff of a fact by its flag notes it, and
 * who has an error copied has been told of one.
 */
function untold(evidence: Evidence, node: GuideNode, index: number): Failure[] {
  const failures: Failure[] = [];
  const asked = pairs.filter(([good]) => node.answers.some(({ sets }) => sets.includes(good)));
  for (const { id, sets, clears, flag } of goingOn(evidence.graph, node)) {
    const journey = journeyWith(evidence, index, node.id, id);
    if (node.heat && sets.includes('cooled') === clears.includes('cooled'))
      failures.push({ fault: { code: 'heat-forgotten', node: node.id, answer: id }, journey });
    if (isFact(flag) && !sets.includes(flag))
      failures.push({
        fault: { code: 'flag-without-fact', node: node.id, answer: id, flag },
        journey,
      });
    for (const [good, bad] of asked)
      // Both at once is as much of a doubt as neither.
      if (sets.includes(good) === sets.includes(bad))
        failures.push({
          fault: { code: 'doubt-left', node: node.id, answer: id, fact: good },
          journey,
        });
  }
  const told = (evidence.flow.must[index] ?? 0) & bit('error-seen');
  if (node.kind === 'step' && node.takesError && !told)
    failures.push({
      fault: { code: 'error-not-told', node: node.id },
      journey: () => evidence.searches.holding(index, 'error-seen', false),
    });
  return failures;
}

/**
 * Nothing that can heat the oven is offered in a journey in which an error was ever seen,
 * anything but "nothing inside" was answered, the door was or may have been forced, or
 * the oven has not cooled; and no cycle is started without someone who stays.
 */
export const heatOnlyWhenSafe: Property = {
  id: 'heat-only-when-safe',
  concerns: (node) => node.heat,
  check: (evidence) =>
    reached(evidence.graph).flatMap(({ node, index }) => [
      ...(node.heat ? atHeat(evidence, node, index) : []),
      ...untold(evidence, node, index),
    ]),
};
