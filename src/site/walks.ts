import { ownNodes, qualify } from '../guide/ids.ts';
import type { Guide, GuideNode } from '../guide/types.ts';
import type { Walks } from '../journey/walks.ts';

/** Whether a slip or a forged link must not lead to the page: its step heats, or moves the breaker or the door. */
export function isGuarded({ action, heat }: GuideNode): boolean {
  return heat || action === 'breaker' || action === 'door-by-hand';
}

/** All ways from the starts of guides to a page, for any of their pages. */
export function walksOf(guides: readonly Guide[]): (guide: Guide, node: GuideNode) => Walks {
  const pages = new Map(
    guides.flatMap((of) =>
      ownNodes(of).map(({ id, answers }) => [
        qualify(of.id, id),
        answers.map((answer) => [answer.id, qualify(of.id, answer.to)] as const),
      ]),
    ),
  );
  const starts = guides.map(({ id, start }) => [id, qualify(id, start)] as const);
  return (guide, node) => {
    // Backwards from the page until nothing new leads there; a Set's iterator sees what is added.
    const before = new Set([qualify(guide.id, node.id)]);
    for (const there of before)
      for (const [from, answers] of pages)
        if (answers.some(([, to]) => to === there)) before.add(from);
    return {
      starts: Object.fromEntries(starts.filter(([, start]) => before.has(start))),
      edges: Object.fromEntries(
        [...before].map((from) => [
          from,
          Object.fromEntries(
            [...Map.groupBy(pages.get(from) ?? [], ([, to]) => to)]
              .filter(([to]) => before.has(to))
              .map(([to, answers]) => [to, answers.map(([id]) => id).join(' ')]),
          ),
        ]),
      ),
    };
  };
}
