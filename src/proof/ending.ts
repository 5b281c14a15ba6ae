import type { GuideNode } from '../guide/types.ts';
import { longestJourney } from './count.ts';
import { isEnd } from './graph.ts';
import { journeyWith, reached } from './property.ts';
import type { Evidence, Failure, Property } from './property.ts';

/** No journey takes more answers than this. */
const MOST_ANSWERS = 25;

function atNode(evidence: Evidence, node: GuideNode, index: number): Failure[] {
  const journey = () => evidence.searches.plain(index);
  const failures: Failure[] = [];
  if (isEnd(node) && node.answers.length > 0)
    failures.push({ fault: { code: 'end-goes-on', node: node.id }, journey });
  if (!isEnd(node) && node.answers.length === 0)
    failures.push({ fault: { code: 'dead-end', node: node.id }, journey });
  for (const { to, answer } of evidence.graph.edges[index] ?? [])
    if (to < 0)
      failures.push({
        fault: { code: 'leads-nowhere', node: node.id, answer: answer.id, target: answer.to },
        journey: journeyWith(evidence, index, node.id, answer.id),
      });
  return failures;
}

/** The loop as a journey: to its first node, once around, and there again. */
function loopFailures({ graph, searches }: Evidence): Failure[] {
  const loop = graph.loop ?? [];
  const ids = loop.flatMap((index) => graph.nodes[index]?.id ?? []);
  const around = loop.flatMap((index, place) => {
    const next = loop[(place + 1) % loop.length];
    const arc = graph.edges[index]?.find(({ to }) => to === next);
    const at = graph.nodes[index]?.id;
    return arc && at !== undefined ? [{ at, answer: arc.answer.id }] : [];
  });
  const [[start], [node]] = [loop, ids];
  if (start === undefined || node === undefined) return [];
  const journey = () => [...(searches.plain(start) ?? []), ...around];
  return [{ fault: { code: 'loop', node, nodes: ids }, journey }];
}

/** Every journey ends, soon: no dead end, no loop, no node out of reach, at most 25 answers. */
export const journeysEnd: Property = {
  id: 'journeys-end',
  concerns: () => true,
  check: (evidence) => {
    const { graph, counts } = evidence;
    const failures = reached(graph).flatMap(({ node, index }) => atNode(evidence, node, index));
    if (graph.start < 0)
      failures.push({
        fault: { code: 'start-missing', node: graph.guide.start },
        journey: () => undefined,
      });
    failures.push(...loopFailures(evidence));
    const inReach = new Set(graph.order);
    graph.nodes.forEach(({ id }, index) => {
      if (!inReach.has(index))
        failures.push({ fault: { code: 'unreachable', node: id }, journey: () => undefined });
    });
    const { longest } = counts;
    if (longest !== null && longest > MOST_ANSWERS) {
      const { journey, end } = longestJourney(graph);
      failures.push({
        fault: { code: 'too-long', node: end, answers: longest, most: MOST_ANSWERS },
        journey: () => journey,
      });
    }
    return failures;
  },
};
