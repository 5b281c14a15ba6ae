import type { Fact, Given, GuideNode, Journey } from '../guide/types.ts';
import { after } from './flow.ts';
import { bit } from './graph.ts';
import type { Arc, Graph } from './graph.ts';

/** Shortest journeys from the start, by node and by what is kept account of on the way. */
export interface Search {
  /** A shortest journey that arrives at a node with this account, if there is one. */
  readonly journeyTo: (node: number, account: number) => Journey | undefined;
}

/**
 * Breadth-first search over pairs of a node and a small account kept along the way
 * (0 to `width` - 1). Linear in the guide for a fixed width.
 */
export function search(
  graph: Graph,
  width: number,
  next: (account: number, node: GuideNode | undefined, arc: Arc) => number,
): Search {
  const size = graph.nodes.length * width;
  const before = new Int32Array(size).fill(-1);
  const via = new Int32Array(size);
  if (graph.start < 0) return { journeyTo: () => undefined };
  const origin = graph.start * width;
  const queue = [origin];
  before[origin] = origin;
  // An array's iterator also visits what is pushed while it runs.
  for (const state of queue) {
    const node = Math.floor(state / width);
    (graph.edges[node] ?? []).forEach((arc, index) => {
      if (arc.to < 0) return;
      const there = arc.to * width + next(state % width, graph.nodes[node], arc);
      if (before[there] !== -1) return;
      before[there] = state;
      via[there] = index;
      queue.push(there);
    });
  }

  function journeyTo(node: number, account: number): Journey | undefined {
    let state = node * width + account;
    if (node < 0 || before[state] === -1) return undefined;
    const journey: Given[] = [];
    for (; state !== origin; state = before[state] ?? origin) {
      const from = Math.floor((before[state] ?? origin) / width);
      const arc = graph.edges[from]?.[via[state] ?? 0];
      const at = graph.nodes[from];
      if (arc && at) journey.push({ at: at.id, answer: arc.answer.id });
    }
    return journey.reverse();
  }
  return { journeyTo };
}

/** Shortest journeys to a node, in every way a counter-example may need. */
export interface Searches {
  readonly plain: (node: number) => Journey | undefined;
  readonly holding: (node: number, fact: Fact, held: boolean) => Journey | undefined;
  readonly breakers: (node: number, passed: number) => Journey | undefined;
}

/** Searches are made when first asked for: a guide that holds needs none. */
export function searchesOf(graph: Graph): Searches {
  const made = new Map<string, Search>();
  function once(key: string, width: number, next: Parameters<typeof search>[2]): Search {
    const known = made.get(key) ?? search(graph, width, next);
    made.set(key, known);
    return known;
  }
  return {
    plain: (node) => once('', 1, () => 0).journeyTo(node, 0),
    holding: (node, fact, held) =>
      once(fact, 2, (account, from, arc) =>
        after(account * bit(fact), from, arc) & bit(fact) ? 1 : 0,
      ).journeyTo(node, held ? 1 : 0),
    breakers: (node, passed) =>
      once('breakers', 4, (account, from) =>
        Math.min(3, account + (from?.action === 'breaker' ? 1 : 0)),
      ).journeyTo(node, passed),
  };
}
