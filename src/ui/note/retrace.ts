/** Which guide of a book a journey belongs to, and what it passed. */
import type { Given, Journey } from '../../guide/types.ts';
import type { Book, BookGuide, BookNode } from '../../note/library.ts';

/** One answer given, with the node it was given at. */
export interface Passed {
  readonly given: Given;
  readonly node: BookNode;
}

export interface Retraced {
  readonly guide: BookGuide;
  readonly passed: readonly Passed[];
  /** Where the journey stands: a stop, a finish, or the next question. */
  readonly end: BookNode;
}

function follow(guide: BookGuide, journey: Journey): Retraced | undefined {
  const passed: Passed[] = [];
  let end = guide.start;
  for (const given of journey) {
    const way = given.at === end.id ? end.byAnswer.get(given.answer) : undefined;
    if (!way) return undefined;
    passed.push({ given, node: end });
    end = way.to;
  }
  return { guide, passed, end };
}

/** Follow a journey in the first guide it fits; undefined for an empty one and where none fits. */
export function retrace(book: Book, journey: Journey): Retraced | undefined {
  if (journey.length === 0) return undefined;
  for (const guide of book.guides) {
    const found = follow(guide, journey);
    if (found) return found;
  }
  return undefined;
}

/** Did the journey end by itself? */
export function isOver({ end }: Retraced): boolean {
  return end.kind === 'stop' || end.kind === 'finish';
}
