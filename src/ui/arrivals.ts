import type { Guide, GuideNode } from '../guide/types.ts';

/**
 * The answers that lead to a node, as `node.answer` joined by spaces; `*.answer`
 * stands for an exit, which is possible from every question and step. With it a
 * page knows a journey that belongs to it without knowing the guide.
 */
export function arrivals(guide: Guide, node: GuideNode): string {
  const given = [...guide.nodes.values()].flatMap(({ id, answers }) =>
    answers.filter(({ to }) => to === node.id).map((answer) => `${id}.${answer.id}`),
  );
  const exits = guide.exits.filter(({ to }) => to === node.id).map(({ id }) => `*.${id}`);
  return [...new Set([...given, ...exits])].join(' ');
}
