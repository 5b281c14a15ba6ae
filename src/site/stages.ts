import { ownNodes, qualify } from '../guide/ids.ts';
import type { Guide, GuideNode } from '../guide/types.ts';

/** What a guide's pages are about, in the order in which journeys come to them. */
export const stages = ['safety', 'happened', 'checks', 'note'] as const;
export type Stage = (typeof stages)[number];

type Edge = readonly [from: string, to: string];

function reached(edges: readonly Edge[], from: readonly string[]): ReadonlySet<string> {
  const found = new Set(from);
  // A Set's iterator also visits what is added while it runs.
  for (const id of found) for (const [at, to] of edges) if (at === id) found.add(to);
  return found;
}

/**
 * The stage of each question and step. Checks last from a journey's first step to its last one, in
 * whichever guide: what is asked before tells what happened, what is asked after is for the note. So
 * no answer leads to an earlier stage.
 *
 * @param guides all guides of the site
 */
export function stagesOf(guides: readonly Guide[]): (guide: Guide, node: GuideNode) => Stage {
  const nodes = guides.flatMap((guide) =>
    ownNodes(guide).map((node) => ({ ...node, id: qualify(guide.id, node.id), guide })),
  );
  const edges = nodes.flatMap(({ id, answers, guide }) =>
    answers.map(({ to }): Edge => [id, qualify(guide.id, to)]),
  );
  const steps = nodes.filter(({ kind }) => kind === 'step').map(({ id }) => id);
  const begun = reached(edges, steps);
  const toCome = reached(
    edges.map(([from, to]) => [to, from]),
    steps,
  );
  return (guide, { id }) => {
    const here = qualify(guide.id, id);
    if (id === guide.start) return 'safety';
    if (!toCome.has(here)) return 'note';
    return begun.has(here) ? 'checks' : 'happened';
  };
}
