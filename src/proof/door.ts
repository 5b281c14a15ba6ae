import { bit } from './graph.ts';
import { reached } from './property.ts';
import type { Property } from './property.ts';

/** No step touches the door or its lever before the oven has cooled, or after it heated again. */
export const doorOnlyWhenCool: Property = {
  id: 'door-only-when-cool',
  concerns: (node) => node.action === 'door-by-hand',
  check: ({ graph, flow, searches }) =>
    reached(graph)
      .filter(({ node }) => node.action === 'door-by-hand')
      .filter(({ index }) => !((flow.must[index] ?? 0) & bit('cooled')))
      .map(({ node, index }) => ({
        fault: { code: 'door-while-hot', node: node.id },
        journey: () => searches.holding(index, 'cooled', false),
      })),
};
