import type { Fact } from '../guide/types.ts';
import { bit } from './graph.ts';
import { reached } from './property.ts';
import type { Failure, Property } from './property.ts';

/** With any of these seen once, nobody is told that the range is fine. */
const unwell: readonly Fact[] = ['error-seen', 'door-forced', 'breaker-tripped', 'trouble-seen'];

/** "Use the range as usual" is said in no journey in which trouble was seen, and calls nobody. */
export const doneOnlyWhenWell: Property = {
  id: 'done-only-when-well',
  concerns: ({ done }) => done === true,
  check: ({ graph, flow, searches }) =>
    reached(graph)
      .filter(({ node }) => node.done)
      .flatMap(({ node, index }) => [
        ...unwell
          .filter((fact) => (flow.may[index] ?? 0) & bit(fact))
          .map((fact): Failure => ({
            fault: { code: 'done-despite', node: node.id, fact },
            journey: () => searches.holding(index, fact, true),
          })),
        ...(node.urgency === 'none'
          ? []
          : [
              {
                fault: { code: 'done-urgent' as const, node: node.id },
                journey: () => searches.plain(index),
              },
            ]),
      ]),
};
