import { qualifyOther, ownNodes } from '../guide/ids.ts';
import type { Guide, GuideNode, NodeId } from '../guide/types.ts';

/**
 * The guides a journey that comes to a page may have begun in, joined by spaces: the page's own,
 * and those that hand over to it.
 */
export function firsts(guides: readonly Guide[], guide: Guide, node: GuideNode): string {
  const handing = guides.filter(({ nodes }) =>
    nodes.has(qualifyOther(guide.id, node.id) as NodeId),
  );
  return [guide, ...handing].map(({ id }) => id).join(' ');
}

/**
 * The answers that lead to a node, as `node.answer` joined by spaces, those of other guides as
 * `guide/node.answer`; `*.answer` stands for an exit, which is possible from every question and
 * step. With it a page knows a journey that belongs to it without knowing the guides.
 *
 * @param guides all guides of the site
 */
export function arrivals(guides: readonly Guide[], guide: Guide, node: GuideNode): string {
  const given = guides.flatMap((from) => {
    const own = from.id === guide.id;
    const here = own ? node.id : qualifyOther(guide.id, node.id);
    return ownNodes(from).flatMap(({ id, answers }) =>
      answers
        .filter(({ to }) => to === here)
        .map((answer) => `${own ? id : qualifyOther(from.id, id)}.${answer.id}`),
    );
  });
  const exits = guide.exits.filter(({ to }) => to === node.id).map(({ id }) => `*.${id}`);
  return [...new Set([...given, ...exits])].join(' ');
}
