import { isEnd } from './graph.ts';
import { reached } from './property.ts';
import type { Property } from './property.ts';

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
