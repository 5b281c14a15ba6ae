/**
 * A journey's rank among all journeys of its guide, and back. The order: stop
 * here first, then everything after the first answer, the second, … then the
 * exits. Both directions take time linear in the journey.
 */
import type { Given, Journey } from '../guide/types.ts';
import { fail, ok, type Result } from '../result.ts';
import { trace } from '../journey/trace.ts';
import type { CodebookGuide, Edge } from './codebook.ts';

/** The first place of a journey, from 0, that the codebook does not allow. */
export interface Astray {
  readonly step: number;
}

/** The rank of a journey: 0 to `guide.first.journeys - 1`. */
export function rankOf(guide: CodebookGuide, journey: Journey): Result<bigint, Astray> {
  const { steps, rest } = trace(guide, journey);
  if (rest.length > 0) return fail({ step: steps.length });
  return ok(
    steps.reduce((rank, { node, edge }) => rank + (node.byAnswer.get(edge.id)?.before ?? 0n), 0n),
  );
}

/** The journey of a rank, undefined for a rank no journey has. */
export function unrank(guide: CodebookGuide, rank: bigint): Journey | undefined {
  if (rank < 0n || rank >= guide.first.journeys) return undefined;
  const journey: Given[] = [];
  let node = guide.first;
  let left = rank;
  while (left > 0n) {
    const edge = lastBefore(node.edges, left);
    // Never: the first way's `before` is 1, and `left` is below `node.journeys`.
    if (!edge) return undefined;
    journey.push({ at: node.id, answer: edge.answer });
    left -= edge.before;
    node = edge.to;
  }
  return journey;
}

/** A loop, not findLast: this is where reading a code spends its time. */
function lastBefore(edges: readonly Edge[], rank: bigint): Edge | undefined {
  let i = edges.length - 1;
  while (i > 0 && (edges[i]?.before ?? 0n) > rank) i -= 1;
  return edges[i];
}
