import { qualifyOther, qualify } from '../guide/ids.ts';
import type { Guide, GuideNode, NodeId } from '../guide/types.ts';
import { heatAfter } from '../journey/trace.ts';

/** The nodes of a guide from which a node can be reached. */
function before(guide: Guide, id: NodeId): GuideNode[] {
  const leading = new Set([id]);
  // A Set's iterator also visits what is added while it runs.
  for (const to of leading)
    for (const node of guide.nodes.values())
      if (node.answers.some((answer) => answer.to === to)) leading.add(node.id);
  leading.delete(id);
  return [...leading].flatMap((one) => guide.nodes.get(one) ?? []);
}

/**
 * What a page with a wait must know of the journeys that come to it, to say how long ago the heat
 * stopped: as `heatEndedAs` reads it.
 *
 * @param guides all guides of the site
 */
export function heatTold(guides: readonly Guide[], guide: Guide, node: GuideNode): string {
  const marks = guides.flatMap((from) => {
    const here = (from.id === guide.id ? node.id : qualifyOther(guide.id, node.id)) as NodeId;
    if (!from.nodes.has(here)) return [];
    return before(from, here).flatMap((step) =>
      step.answers
        .filter(({ heatEnded }) => step.heat || heatEnded !== undefined)
        .map((edge) => {
          const after = heatAfter(undefined, { node: step, edge });
          return `${qualify(from.id, step.id)}.${edge.id}=${String(after ?? '')}`;
        }),
    );
  });
  return [...new Set(marks)].toSorted().join(' ');
}
