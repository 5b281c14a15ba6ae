/** A book's names in words. A frozen name may have lost its sentence; then the name itself stands. */
import type { Graph, GraphNode } from '../../guide/types.ts';
import type { Words } from '../shared/words.ts';

export function titleOf(words: Words, guide: Graph, node: GraphNode): string {
  const key = `${guide.id}:${node.sentences}.title`;
  return words.has(key) ? words.t(key) : node.sentences;
}

/** An exit is worded where the guide starts, not at the node it was given at. */
export function answerOf(words: Words, guide: Graph, node: GraphNode, answer: string): string {
  const start = guide.nodes.get(guide.start) ?? node;
  const key = [node.sentences, start.sentences]
    .map((text) => `${guide.id}:${text}.answers.${answer}`)
    .find((candidate) => words.has(candidate));
  return key === undefined ? answer : words.t(key);
}
