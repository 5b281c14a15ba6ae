import { depthFirst } from '../guide/loops.ts';
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
  readonly edges: readonly (readonly Arc[])[];
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
  const edges = nodes.map(({ answers }) => {
    if (answers.length === 0) return [];
    const shown = exits.filter((exit) => !answers.some(({ id }) => id === exit.answer.id));
    return [...answers.map(arcOf), ...shown];
  });
  const start = indexOf.get(guide.start) ?? -1;
  const next = edges.map((arcs) => arcs.map(({ to }) => to).filter((to) => to >= 0));
  const { postorder, loops } = depthFirst(start < 0 ? [] : [start], (node) => next[node] ?? []);
  return { guide, nodes, start, edges, order: postorder.toReversed(), loop: loops[0] };
}

/** Ended well or at a stop: nothing follows. */
export function isEnd(node: GuideNode | undefined): boolean {
  return node?.kind === 'stop' || node?.kind === 'finish';
}
