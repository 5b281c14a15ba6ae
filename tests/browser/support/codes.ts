import type { Fragment } from '../../../src/address/fragment.ts';
import { dayOf } from '../../../src/note/day.ts';
import { writeCode } from '../../../src/note/write.ts';
import { codebooks, newest } from './codebooks.ts';
import { doorLocked, shortestJourneys } from './shortest-journeys.ts';

export const guide = doorLocked();
export const shortest = shortestJourneys(guide);
/** The day of all these notes. */
export const made = '2026-11-25';

/** A note whose journey leads to a node by a shortest way. */
export function to(node: string, parts: Partial<Fragment> = {}): Fragment {
  const journey = shortest.get(node as never);
  if (!journey) throw new Error(`no way to ${node}`);
  return { journey, details: {}, made, ...parts };
}

/** The code as the command line would write it. */
export function codeFor({ journey, details, error = '', made: on = made }: Fragment): string {
  const day = dayOf(new Date(`${on}T00:00:00Z`));
  const written = writeCode(
    { release: newest, guide: guide.id, journey, day, details, error },
    codebooks,
  );
  if (!written.ok) throw new Error(JSON.stringify(written.error));
  return written.value;
}

/** Answers that lead to the wait for an oven still warm; nothing is taken off the slowest oven's time. */
export const toWait = [
  ['danger', 'none'],
  ['since', 'unsure'],
  ['near', 'heat'],
] as const;
