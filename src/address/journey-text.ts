import type { AnswerId, Given, Journey, NodeId } from '../guide/types.ts';

/** A name as it may stand in a fragment: what the loader lets through, and no longer. */
export const NAME = /^[a-z0-9-]{1,60}$/;
/** A node's name; that of another guide's node is `guide/node`. */
export const NODE_NAME = /^[a-z0-9-]{1,60}(?:\/[a-z0-9-]{1,60})?$/;
/** More than any journey has (25 answers): a bound for hostile fragments. */
const MOST = 64;

/**
 * Read the journey of a fragment's `j=`: `node.answer` pairs joined by `~`. Reads up to
 * the first pair that is not of this form, because what follows a gap has no meaning;
 * the names need not be in any guide. Never throws.
 */
export function parseJourney(text: string): Journey {
  const journey: Given[] = [];
  for (const pair of text.split('~', MOST)) {
    const [at = '', answer = '', more] = pair.split('.', 3);
    if (more !== undefined || !NODE_NAME.test(at) || !NAME.test(answer)) break;
    journey.push({ at: at as NodeId, answer: answer as AnswerId });
  }
  return journey;
}

/** Write a journey for a fragment's `j=`; the reverse of `parseJourney`. */
export function formatJourney(journey: Journey): string {
  return journey.map(({ at, answer }) => `${at}.${answer}`).join('~');
}

/** Values as a fragment: '~' and '/' are safe there, and plain they keep it short and readable. */
export const plainFragment = (values: URLSearchParams): string =>
  values.toString().replaceAll('%7E', '~').replaceAll('%2F', '/');
