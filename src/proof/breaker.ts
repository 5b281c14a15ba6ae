import { bit } from './graph.ts';
import { journeyWith, reached } from './property.ts';
import type { Failure, Property } from './property.ts';

/** Off once and on once. */
const MOST_BREAKER_STEPS = 2;

/**
 * The breaker is worked only after the panel was found fit, and switched off at most
 * once: a journey has at most one step off and one step on. A breaker that trips leads to a stop
 * that says to leave it off, a panel that turns out unfit to a stop: nobody touches it again.
 */
export const breakerOnceAndReady: Property = {
  id: 'breaker-once-and-ready',
  concerns: (node) => node.action === 'breaker',
  check: (evidence) => {
    const { graph, flow, searches } = evidence;
    return reached(graph).flatMap(({ node, index }) => {
      const failures: Failure[] = [];
      const passed = flow.breakers[index] ?? 0;
      if (node.action === 'breaker') {
        if (!((flow.must[index] ?? 0) & bit('panel-ready')))
          failures.push({
            fault: { code: 'panel-not-ready', node: node.id },
            journey: () => searches.holding(index, 'panel-ready', false),
          });
        if (passed >= MOST_BREAKER_STEPS)
          failures.push({
            fault: { code: 'breaker-again', node: node.id },
            journey: () => searches.breakers(index, passed),
          });
      }
      for (const { id, to, sets, clears } of node.answers) {
        const there = graph.guide.nodes.get(to);
        const left = sets.includes('breaker-tripped')
          ? there?.breakerStaysOff === true
          : !clears.includes('panel-ready') || there?.kind === 'stop';
        if (!left)
          failures.push({
            fault: { code: 'breaker-not-left', node: node.id, answer: id },
            journey: journeyWith(evidence, index, node.id, id),
          });
      }
      return failures;
    });
  },
};
