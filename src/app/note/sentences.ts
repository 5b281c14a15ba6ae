/** A book's names in words. A frozen name may have lost its sentence; then the name itself stands. */
import type { BookGuide, BookNode } from '../../note/library.ts';
import type { Words } from '../shared/words.ts';

export function titleOf(words: Words, guide: BookGuide, node: BookNode): string {
  const key = `${guide.id}:${node.text}.title`;
  return words.has(key) ? words.t(key) : node.text;
}

/** An exit is worded where the guide starts, not at the node it was given at. */
export function answerOf(words: Words, guide: BookGuide, node: BookNode, answer: string): string {
  const key = [node.text, guide.start.text]
    .map((text) => `${guide.id}:${text}.answers.${answer}`)
    .find((candidate) => words.has(candidate));
  return key === undefined ? answer : words.t(key);
}
