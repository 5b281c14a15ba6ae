/**
 * A journey's rank among all journeys of its guide, and back. The order: stop
 * here first, then everything after the first answer, the second, … then the
 * exits. Both directions take time linear in the journey.
 */
import type { Given, Journey } from '../guide/types.ts';
import { fail, ok, type Result } from '../result.ts';
import type { BookGuide, BookNode, Way } from './library.ts';

/** Where a journey has come to. */
export interface Reached {
  readonly end: BookNode;
  /** 0 to `guide.start.journeys - 1`. */
  readonly rank: bigint;
}

/** The first place of a journey, from 0, that the book does not allow. */
export interface Astray {
  readonly step: number;
}

/** Follow a journey to its end, adding up its rank. */
export function follow(guide: BookGuide, journey: Journey): Result<Reached, Astray> {
  let end = guide.start;
  let rank = 0n;
  for (const [step, { at, answer }] of journey.entries()) {
    const way = end.id === at ? end.byAnswer.get(answer) : undefined;
    if (!way) return fail({ step });
    rank += way.before;
    end = way.to;
  }
  return ok({ end, rank });
}

/** The journey of a rank, undefined for a rank no journey has. */
export function unrank(guide: BookGuide, rank: bigint): Journey | undefined {
  if (rank < 0n || rank >= guide.start.journeys) return undefined;
  const journey: Given[] = [];
  let node = guide.start;
  let left = rank;
  while (left > 0n) {
    const way = lastBefore(node.ways, left);
    // Never: the first way's `before` is 1, and `left` is below `node.journeys`.
    if (!way) return undefined;
    journey.push({ at: node.id, answer: way.answer });
    left -= way.before;
    node = way.to;
  }
  return journey;
}

/** A loop, not findLast: this is where reading a code spends its time. */
function lastBefore(ways: readonly Way[], rank: bigint): Way | undefined {
  let i = ways.length - 1;
  while (i > 0 && (ways[i]?.before ?? 0n) > rank) i -= 1;
  return ways[i];
}
