/**
 * A journey's rank among all journeys of its guide, and back. The order: stop
 * here first, then everything after the first answer, the second, … then the
 * exits. Both directions take time linear in the journey.
 */
import type { Given, Journey } from '../guide/types.ts';
import { fail, ok, type Result } from '../result.ts';
import { trace } from '../journey/trace.ts';
import type { BookGuide, Way } from './library.ts';

/** The first place of a journey, from 0, that the book does not allow. */
export interface Astray {
  readonly step: number;
}

/** The rank of a journey: 0 to `guide.first.journeys - 1`. */
export function rankOf(guide: BookGuide, journey: Journey): Result<bigint, Astray> {
  const { steps, rest } = trace(guide, journey);
  if (rest.length > 0) return fail({ step: steps.length });
  return ok(
    steps.reduce((rank, { node, edge }) => rank + (node.byAnswer.get(edge.id)?.before ?? 0n), 0n),
  );
}

/** The journey of a rank, undefined for a rank no journey has. */
export function unrank(guide: BookGuide, rank: bigint): Journey | undefined {
  if (rank < 0n || rank >= guide.first.journeys) return undefined;
  const journey: Given[] = [];
  let node = guide.first;
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
