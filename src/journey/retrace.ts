/** What a journey passed in its guide. */
import type { Given, Journey } from '../guide/types.ts';
import { bookGuide } from '../note/library.ts';
import type { Book, BookGuide, BookNode } from '../note/library.ts';

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

/** Follow a journey in its guide; undefined for an empty one and where it does not fit. */
export function retrace(book: Book, guide: string, journey: Journey): Retraced | undefined {
  const found = bookGuide(book, guide);
  return journey.length === 0 || !found ? undefined : follow(found, journey);
}

/** Did the journey end by itself? */
export function isOver({ end }: Retraced): boolean {
  return end.kind === 'stop' || end.kind === 'finish';
}
