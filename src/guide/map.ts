/**
 * A guide as one picture: one box a page whatever the track, one arrow for all answers of a page
 * that lead to the same place. Every edge of the compiled graph is in it, and no other.
 */
import { ownNodes, qualifyOther } from './ids.ts';
import type { Answer, Guide, GuideNode } from './types.ts';

/** An answer on an arrow; `tracks` are told where the page's other tracks lead elsewhere. */
export interface Way {
  readonly answer: Answer;
  readonly tracks: readonly string[];
}

export interface Arrow {
  readonly from: string;
  readonly to: string;
  readonly ways: readonly Way[];
  /** Every answer of the page on every track: nothing needs telling apart. */
  readonly every: boolean;
}

export interface GuideMap {
  /** Page → its first copy, in the order of the file; another guide's page is `guide/page`. */
  readonly boxes: ReadonlyMap<string, GuideNode>;
  readonly arrows: readonly Arrow[];
  /** The danger answers, possible from every page: told once, drawn nowhere. */
  readonly exits: readonly Arrow[];
}

/** Which box stands for a node. */
export function boxOf(guide: Pick<Guide, 'id'>, node: GuideNode): string {
  return node.guide === guide.id ? node.page : qualifyOther(node.guide, node.page);
}

/** The picture of a guide; the pages of others are in it only where an answer leads to them. */
export function mapOf(guide: Guide): GuideMap {
  const boxes = new Map<string, GuideNode>();
  const copies = Map.groupBy(ownNodes(guide), ({ page }) => page);
  for (const [page, [first]] of copies) if (first) boxes.set(page, first);
  const isExit = ({ id, to }: Answer): boolean =>
    guide.exits.some((exit) => exit.id === id && exit.to === to);
  const arrows = [...copies].flatMap(([from, nodes]): Arrow[] => {
    const given = nodes.flatMap(({ track, answers }) =>
      answers.flatMap((answer) => {
        const target = guide.nodes.get(answer.to);
        return target ? [{ answer, track, target, to: boxOf(guide, target) }] : [];
      }),
    );
    for (const { to, target } of given) if (!boxes.has(to)) boxes.set(to, target);
    const ends = Map.groupBy(given, ({ to, answer }) => `${to} ${String(isExit(answer))}`);
    return [...ends.values()].map((same) => ({
      from,
      to: same[0]?.to ?? '',
      every: same.length === given.length,
      ways: [...Map.groupBy(same, ({ answer }) => answer.id).values()].flatMap((alike) => {
        const tracks = alike.length < nodes.length ? alike.flatMap(({ track }) => track ?? []) : [];
        return alike.slice(0, 1).map(({ answer }) => ({ answer, tracks }));
      }),
    }));
  });
  const out = ({ ways }: Arrow): boolean => ways.every(({ answer }) => isExit(answer));
  return { boxes, arrows: arrows.filter((one) => !out(one)), exits: arrows.filter(out) };
}
