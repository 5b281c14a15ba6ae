import { reached } from './property.ts';
import type { Failure, Property } from './property.ts';

/**
 * Every stop names whom to call, an emergency stop the emergency number before all
 * others, and every stop says what not to do.
 */
export const stopsCallAndWarn: Property = {
  id: 'stops-call-and-warn',
  concerns: (node) => node.kind === 'stop',
  check: ({ graph, searches, text }) =>
    reached(graph)
      .filter(({ node }) => node.kind === 'stop')
      .flatMap(({ node, index }) => {
        const { id, call, urgency } = node;
        const never = text?.sentences[node.sentences]?.never?.filter((line) => line.trim() !== '');
        const codes = [
          ...(call.length === 0 ? (['nobody-to-call'] as const) : []),
          ...(urgency === 'emergency' && call[0] !== 'emergency'
            ? (['emergency-not-first'] as const)
            : []),
          ...(text && !never?.length ? (['nothing-warned'] as const) : []),
        ];
        return codes.map((code): Failure => ({
          fault: { code, node: id },
          journey: () => searches.plain(index),
        }));
      }),
};
