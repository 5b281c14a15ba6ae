import { NAME, NODE_NAME } from './grammar.ts';
import type { AnswerId, Given, Journey, NodeId } from '../guide/types.ts';

/** More than any journey has (25 answers): a bound for hostile fragments. */
const MOST = 64;

/**
 * Read the journey of a fragment's `j`: `node.answer` pairs joined by `~`; that of an early tap's `a`
 * is one pair. Reads up to the first pair that is not of this form, because what follows a gap has no
 * meaning; the names need not be in any guide. Never throws.
 */
export function parseJourney(text = ''): Journey {
  const journey: Given[] = [];
  for (const pair of text.split('~', MOST)) {
    const [at = '', answer = '', more] = pair.split('.', 3);
    if (more !== undefined || !NODE_NAME.test(at) || !NAME.test(answer)) break;
    journey.push({ at: at as NodeId, answer: answer as AnswerId });
  }
  return journey;
}

/** Write a journey for a fragment's `j`; the reverse of `parseJourney`. */
export function formatJourney(journey: Journey): string {
  return journey.map(({ at, answer }) => `${at}.${answer}`).join('~');
}
