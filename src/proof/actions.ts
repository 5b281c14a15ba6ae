import { actions } from '../guide/types.ts';
import { asksTooMuch } from './asks-too-much.ts';
import { reached } from './property.ts';
import type { Failure, Property } from './property.ts';
import { told } from './sentences.ts';

/**
 * Every step asks for an action of the closed list, and no sentence of a step asks for
 * a tool, a cover taken off, the range moved, a wire touched, or force.
 */
export const actionsListed: Property = {
  id: 'actions-listed',
  concerns: (node) => node.kind === 'step',
  check: ({ graph, searches, text }) =>
    reached(graph)
      .filter(({ node }) => node.kind === 'step')
      .flatMap(({ node, index }): Failure[] => {
        const journey = () => searches.plain(index);
        const asked = told(text?.sentences[node.sentences] ?? {}).flatMap(asksTooMuch);
        const listed = node.action !== undefined && actions.includes(node.action);
        return [
          ...(listed
            ? []
            : [
                {
                  fault: {
                    code: 'action-unlisted' as const,
                    node: node.id,
                    action: node.action ?? '',
                  },
                  journey,
                },
              ]),
          ...asked.map(({ words, sentence }) => ({
            fault: { code: 'asks-too-much' as const, node: node.id, words, sentence },
            journey,
          })),
        ];
      }),
};
