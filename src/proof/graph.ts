import { facts } from '../guide/types.ts';
import type { Answer, Fact, Guide, GuideNode, NodeId } from '../guide/types.ts';

/** A set of facts, one bit each in the order of `facts`. */
export type FactSet = number;

export function bit(...of: readonly Fact[]): FactSet {
  return of.reduce((set, fact) => set | (1 << facts.indexOf(fact)), 0);
}

/** One way on from a node. `to` is an index into `nodes`, or -1 for a name that is no node. */
export interface Arc {
  readonly answer: Answer;
  readonly to: number;
  readonly sets: FactSet;
  readonly clears: FactSet;
}

/** A guide with its nodes numbered, so that every algorithm here runs over plain arrays. */
export interface Graph {
  readonly guide: Guide;
  readonly nodes: readonly GuideNode[];
  /** Index of the start, -1 where the guide has none. */
  readonly start: number;
  /** For every node its own answers, then the exits. */
  readonly ways: readonly (readonly Arc[])[];
  /** The nodes reached from the start; without loops this is a topological order. */
  readonly order: readonly number[];
  /** A loop among them: each leads to the next, the last to the first. */
  readonly loop: readonly number[] | undefined;
}

/** The guide's nodes numbered in their order; exits a node's own answers hide are left out. */
export function graphOf(guide: Guide): Graph {
  const nodes = [...guide.nodes.values()];
  const indexOf = new Map<NodeId, number>(nodes.map((node, index) => [node.id, index]));
  const arcOf = (answer: Answer): Arc => ({
    answer,
    to: indexOf.get(answer.to) ?? -1,
    sets: bit(...answer.sets),
    clears: bit(...answer.clears),
  });
  const exits = guide.exits.map(arcOf);
  const ways = nodes.map(({ answers }) => {
    if (answers.length === 0) return [];
    const shown = exits.filter((exit) => !answers.some(({ id }) => id === exit.answer.id));
    return [...answers.map(arcOf), ...shown];
  });
  const start = indexOf.get(guide.start) ?? -1;
  return { guide, nodes, start, ways, ...sortTopologically(nodes.length, start, ways) };
}

/**
 * Reverse postorder of a depth-first search, which in a graph without loops is a
 * topological order (Tarjan 1976; Cormen et al., Introduction to Algorithms,
 * section 20.4, from memory), and the first loop met, if any. Not recursive: a guide
 * of 100,000 nodes in a row would overflow the stack.
 */
function sortTopologically(
  count: number,
  start: number,
  ways: readonly (readonly Arc[])[],
): Pick<Graph, 'order' | 'loop'> {
  const FRESH = 0;
  const OPEN = 1;
  const DONE = 2;
  const state = new Uint8Array(count);
  const turn = new Int32Array(count);
  const open = start >= 0 ? [start] : [];
  if (start >= 0) state[start] = OPEN;
  const postorder: number[] = [];
  let loop: number[] | undefined;
  for (let node = open.at(-1); node !== undefined; node = open.at(-1)) {
    const index = turn[node] ?? 0;
    const arc = ways[node]?.[index];
    if (!arc) {
      state[node] = DONE;
      postorder.push(node);
      open.pop();
      continue;
    }
    turn[node] = index + 1;
    if (arc.to < 0) continue;
    if (state[arc.to] === OPEN) loop ??= open.slice(open.indexOf(arc.to));
    else if (state[arc.to] === FRESH) {
      state[arc.to] = OPEN;
      open.push(arc.to);
    }
  }
  return { order: postorder.reverse(), loop };
}

/** Ended well or at a stop: nothing follows. */
export function isEnd(node: GuideNode | undefined): boolean {
  return node?.kind === 'stop' || node?.kind === 'finish';
}
