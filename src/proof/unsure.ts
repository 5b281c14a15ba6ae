import { isEnd } from './graph.ts';
import { journeyWith, reached } from './property.ts';
import type { Failure, Property } from './property.ts';

/** Every question and every step can be answered with "I am not sure". */
export const unsureEverywhere: Property = {
  id: 'unsure-everywhere',
  concerns: (node) => !isEnd(node),
  check: ({ graph, searches }) =>
    reached(graph)
      .filter(({ node }) => !isEnd(node) && !node.answers.some(({ id }) => id === 'unsure'))
      .map(({ node, index }) => ({
        fault: { code: 'unsure-missing', node: node.id },
        journey: () => searches.plain(index),
      })),
};

/**
 * Not to know is no sign of danger: "I am not sure" raises no flag and ends at nothing urgent. Only
 * at the danger question does it lead out of the kitchen.
 */
export const unsureIsNoAlarm: Property = {
  id: 'unsure-is-no-alarm',
  concerns: (node) => !isEnd(node),
  check: (evidence) => {
    const { guide } = evidence.graph;
    return reached(evidence.graph).flatMap(({ node, index }) =>
      node.answers
        .filter(({ id }) => id === 'unsure')
        .flatMap(({ id: answer, to, flag }): Failure[] => {
          const urgency = guide.nodes.get(to)?.urgency;
          const alarms = urgency === 'today' || urgency === 'emergency';
          const at = { node: node.id, answer };
          const journey = journeyWith(evidence, index, node.id, answer);
          return [
            ...(flag === undefined
              ? []
              : [{ fault: { code: 'unsure-flags' as const, ...at, flag }, journey }]),
            ...(alarms && node.id !== guide.start
              ? [{ fault: { code: 'unsure-alarms' as const, ...at, to }, journey }]
              : []),
          ];
        }),
    );
  },
};
