import { qualifyOther, parseId } from '../guide/ids.ts';
import type { GraphNode, Journey, NodeId } from '../guide/types.ts';
import type { Evidence } from './types.ts';

/** A node's answers count under the text id of the node. */
interface NodesOfGuide {
  readonly nodes: ReadonlyMap<NodeId, Pick<GraphNode, 'sentences'>>;
}

/** The key under which an optional detail counts as evidence. */
export function detailKey(detail: string): string {
  return `detail.${detail}`;
}

/** The key under which a check's result counts as evidence, its answer the result's id. */
export function checkKey(check: string): string {
  return `check.${check}`;
}

/**
 * A journey and its optional details as evidence, in the order given, details last.
 * When two steps share their sentences (a second try of the door), the later
 * answer stands. Answers that no table lists are kept: they carry no information.
 */
export function evidenceOf(
  guide: NodesOfGuide,
  journey: Journey,
  details: Readonly<Record<string, string>> = {},
): Evidence {
  const answers = new Map<string, string>();
  for (const { at, answer } of journey) {
    const key = guide.nodes.get(at)?.sentences;
    if (key === undefined) continue;
    answers.delete(key);
    answers.set(key, answer);
  }
  for (const [detail, answer] of Object.entries(details)) answers.set(detailKey(detail), answer);
  return [...answers].map(([key, answer]) => ({ key, answer }));
}

/**
 * The evidence of a journey that came over from another guide, as the tables of the guide it
 * ended in name it: that guide's own answers by their names, those of others as `guide/name`.
 * So earlier answers count only where a table of the last guide names them.
 *
 * @param first the guide the journey began in, whose names `evidence` has
 */
export function seenFrom(last: string, first: string, evidence: Evidence): Evidence {
  return evidence.map(({ key, answer }) => {
    if (key.startsWith(detailKey(''))) return { key, answer };
    const { guide = first, name } = parseId(key);
    return { key: guide === last ? name : qualifyOther(guide, name), answer };
  });
}
