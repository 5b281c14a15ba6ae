import type { AnswerId, Guide, GuideNode } from '../guide/types.ts';
import { isEnd } from './graph.ts';
import type { Failure, Property } from './property.ts';

/** The one answer of the start that goes on; all others tell of a danger. */
const NONE = 'none';

function isOwnStop(node: GuideNode | undefined, answer: AnswerId): boolean {
  return (
    node?.kind === 'stop' &&
    // Whoever calls the emergency number first has an emergency.
    node.urgency === (node.call[0] === 'emergency' ? 'emergency' : 'today') &&
    node.danger === answer &&
    node.answers.length === 0
  );
}

/** Ids of answers that are an exit or a danger answer of the start, but not both alike. */
function differing(guide: Guide, dangers: GuideNode['answers']): AnswerId[] {
  const pairs = (answers: GuideNode['answers']): Map<string, AnswerId> =>
    new Map(answers.map(({ id, to }) => [`${id}.${to}`, id]));
  const [exits, own] = [pairs(guide.exits), pairs(dangers)];
  const missing = [...own].filter(([pair]) => !exits.has(pair));
  const extra = [...exits].filter(([pair]) => !own.has(pair));
  return [...new Set([...missing, ...extra].map(([, id]) => id))];
}

/**
 * The danger question comes first, and each danger answer ends at once at the stop that is for
 * it and for nothing else, one for today at the latest; every other page offers the same way out.
 * No stop is for a danger that is not asked about.
 */
export const dangerFirst: Property = {
  id: 'danger-first',
  concerns: () => true,
  check: ({ graph }) => {
    const { guide } = graph;
    const start = guide.nodes.get(guide.start);
    const fault = (
      code: 'start-missing' | 'start-not-question' | 'none-missing' | 'no-danger-answers',
    ): Failure => ({
      fault: { code, node: guide.start },
      journey: () => undefined,
    });
    if (!start) return [fault('start-missing')];
    if (start.kind !== 'question') return [fault('start-not-question')];

    const failures: Failure[] = [];
    const goesOn = start.answers.find(({ id }) => id === NONE);
    if (!goesOn || isEnd(guide.nodes.get(goesOn.to))) failures.push(fault('none-missing'));
    const others = start.answers.filter(({ id }) => id !== NONE);
    const dangers = others.filter(({ id }) => id !== 'unsure');
    if (dangers.length === 0) failures.push(fault('no-danger-answers'));
    for (const { id, to } of others)
      if (!isOwnStop(guide.nodes.get(to), id))
        failures.push({
          fault: { code: 'not-own-stop', node: start.id, answer: id },
          journey: () => [{ at: start.id, answer: id }],
        });
    // A stop for a danger that the start does not ask about: its answer is lost.
    const asked = new Set(others.map(({ id }) => id));
    for (const { id, danger } of guide.nodes.values())
      if (danger !== undefined && !asked.has(danger))
        failures.push({
          fault: { code: 'danger-unasked', node: id, answer: danger },
          journey: () => undefined,
        });
    const answers = differing(guide, dangers);
    if (answers.length > 0)
      failures.push({
        fault: { code: 'exits-differ', node: start.id, answers },
        journey: () => undefined,
      });
    return failures;
  },
};
