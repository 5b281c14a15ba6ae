/** What the desk shows of a node: its own answers on number keys, its cautions. */
import type { BookGuide, BookNode, Way } from '../../note/library.ts';
import { nodeWords } from '../shared/content-words.ts';
import type { Words } from '../shared/words.ts';
import type { CarriedNode, Page } from './page.ts';

/** The answer that every question and step has: the caller does not know. */
export const UNSURE = 'unsure';

/** An answer with the key that gives it. */
export interface Choice {
  readonly way: Way;
  readonly key: string;
}

/** Nodes the page does not know (of an older book) show no more than the book has. */
export function carriedOf({ nodes }: Page, node: BookNode): CarriedNode {
  return nodes[node.id] ?? { left: { least: 0, most: 0 }, answers: node.ways.length };
}

/** A node's own answers in order on 1 to 9, "does not know" last on 0. Exits have a key of their own. */
export function choicesOf(page: Page, node: BookNode): Choice[] {
  const own = node.ways.slice(0, carriedOf(page, node).answers);
  const known = own.filter(({ answer }) => answer !== UNSURE);
  return [
    ...known.map((way, index) => ({ way, key: String(index + 1) })),
    ...own.filter(({ answer }) => answer === UNSURE).map((way) => ({ way, key: '0' })),
  ];
}

/** What must be read out before going on: the caution box, and what not to do. */
export function cautionsOf(words: Words, guide: BookGuide, node: BookNode): readonly string[] {
  const { care, never } = nodeWords(words, guide, node);
  return [...care, ...never];
}
