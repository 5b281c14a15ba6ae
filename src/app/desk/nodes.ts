/** What the desk shows of a node: its own answers on number keys, its cautions. */
import type { Answer, Graph, GraphNode } from '../../guide/types.ts';
import { nodeWords } from '../shared/content-words.ts';
import type { Words } from '../shared/words.ts';
import { answerKeys } from './keys.ts';
import type { DeskNode, Page } from './page.ts';

/** The answer that every question and step has: the caller does not know. */
export const UNSURE = 'unsure';

/** An answer with the key that gives it. */
export interface Choice {
  readonly edge: Answer;
  readonly key: string;
}

/** Nodes the page does not know (of an older codebook) show no more than the codebook has. */
export function deskNodeOf({ nodes }: Page, node: GraphNode): DeskNode {
  return nodes[node.id] ?? {};
}

/** A node's own answers in order on `answerKeys`, "does not know" last on 0. Exits have a key of their own. */
export function choicesOf({ answers }: GraphNode): Choice[] {
  const known = answers.filter(({ id }) => (id as string) !== UNSURE);
  return [
    ...known.map((edge, index) => ({ edge, key: answerKeys[index] ?? '' })),
    ...answers.filter(({ id }) => (id as string) === UNSURE).map((edge) => ({ edge, key: '0' })),
  ];
}

/** What must be read out before going on: the caution box, and what not to do. */
export function cautionsOf(words: Words, guide: Graph, node: GraphNode): readonly string[] {
  const { care, never } = nodeWords(words, guide, node);
  return [...care, ...never];
}
