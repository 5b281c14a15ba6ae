import type { Given, Journey, NodeId } from '../guide/types.ts';
import { isEnd } from './graph.ts';
import type { Graph } from './graph.ts';

/** How many journeys a guide has; null where a loop makes them endless. */
export interface JourneyCounts {
  /** Journeys that came to a stop or a finish. */
  readonly complete: bigint | null;
  /** All journeys, unfinished ones and the empty one too. */
  readonly all: bigint | null;
  /** Answers in the shortest and in the longest journey to an end. */
  readonly shortest: number | null;
  readonly longest: number | null;
}

/** Sum over all journeys from the start of what each counts for; nodes with 0 cut theirs off. */
function sum(graph: Graph, here: (node: number) => bigint, passes: (node: number) => boolean) {
  const total: bigint[] = [];
  for (const node of graph.order.toReversed()) {
    if (!passes(node)) continue;
    let sumHere = here(node);
    for (const { to } of graph.edges[node] ?? []) sumHere += total[to] ?? 0n;
    total[node] = sumHere;
  }
  return total[graph.start] ?? 0n;
}

/** Answers left from each node to an end, by the shortest and the longest way; infinite: none. */
function lengths(graph: Graph): { least: Float64Array; most: Float64Array } {
  const least = new Float64Array(graph.nodes.length);
  const most = new Float64Array(graph.nodes.length);
  for (const node of graph.order.toReversed()) {
    let [short, long] = isEnd(graph.nodes[node]) ? [0, 0] : [Infinity, -Infinity];
    for (const { to } of graph.edges[node] ?? []) {
      short = Math.min(short, 1 + (least[to] ?? Infinity));
      long = Math.max(long, 1 + (most[to] ?? -Infinity));
    }
    [least[node], most[node]] = [short, long];
  }
  return { least, most };
}

/** Count the guide's journeys by dynamic programming from the ends, linear in the guide. */
export function countJourneys(graph: Graph): JourneyCounts {
  if (graph.loop) return { complete: null, all: null, shortest: null, longest: null };
  const { least, most } = lengths(graph);
  const finite = (length: number | undefined): number | null =>
    length !== undefined && Number.isFinite(length) ? length : null;
  const everywhere = (): boolean => true;
  return {
    complete: sum(graph, (node) => (isEnd(graph.nodes[node]) ? 1n : 0n), everywhere),
    all: sum(graph, () => 1n, everywhere),
    shortest: finite(least[graph.start]),
    longest: finite(most[graph.start]),
  };
}

/** A longest journey to an end of a guide without loops, and that end. */
export function longestJourney(graph: Graph): { readonly journey: Journey; readonly end: NodeId } {
  const { most } = lengths(graph);
  const journey: Given[] = [];
  let here = graph.start;
  for (;;) {
    const left = most[here] ?? 0;
    const arc = graph.edges[here]?.find(({ to }) => most[to] === left - 1);
    const node = graph.nodes[here];
    if (!arc || !node) return { journey, end: node?.id ?? graph.guide.start };
    journey.push({ at: node.id, answer: arc.answer.id });
    here = arc.to;
  }
}

/** How many of all journeys pass one of the nodes; null where a loop makes them endless. */
export function countPassing(
  graph: Graph,
  all: bigint | null,
  concerns: (node: number) => boolean,
): bigint | null {
  if (all === null) return null;
  const without = sum(
    graph,
    () => 1n,
    (node) => !concerns(node),
  );
  return all - without;
}
