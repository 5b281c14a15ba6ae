/** Where the elements of a part of the argument stand: goals from left to right, what shows them last. */
import { Graph, layout } from '@dagrejs/dagre';
import { LINE, SHEET, wrapped } from '../map-layout.ts';
import type { Claim } from './claims.ts';

const PAD = 6;
/** Units: a drawing stands on a sheet with its heading. */
export const MOST = SHEET.height - 110;
/** A solution is a circle with its name in it; what it says stands beside it. */
export const CIRCLE = 17;
/** Letters a line, and units: four columns, the last of solutions, are as wide as a sheet. */
const LETTERS = { box: 25, solution: 30 };
const WIDTH = { box: 172, solution: 240 };

export interface Element {
  readonly claim: Claim;
  /** Its left upper corner. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly string[];
}

export interface Part {
  readonly width: number;
  readonly height: number;
  readonly elements: readonly Element[];
  /** From the right side of one to the left side of another; hollow heads lead to what it is claimed under. */
  readonly lines: readonly {
    readonly d: string;
    readonly context: boolean;
    readonly head: string;
  }[];
}

const round = (value: number): number => Math.round(value * 10) / 10;

/** An element's words: its name first, but for a solution, which has it in its circle. */
const linesOf = ({ kind, id, says }: Claim): readonly string[] =>
  kind === 'solution'
    ? wrapped(says, 5, LETTERS.solution)
    : wrapped(`${id} ${says}`, 5, LETTERS.box);

/** Draws a claim with what is below it, as deep as `below` goes. */
function drawn(top: Claim, below: (claim: Claim) => readonly Claim[]): Part {
  const graph = new Graph();
  graph.setGraph({ rankdir: 'LR', nodesep: 4, edgesep: 4, ranksep: 22, marginx: 4, marginy: 4 });
  graph.setDefaultEdgeLabel(() => ({}));
  const claims = new Map<string, Claim>();
  const edges: { from: Claim; to: Claim; context: boolean }[] = [];
  const add = (claim: Claim): void => {
    if (claims.has(claim.id)) return;
    claims.set(claim.id, claim);
    const lines = linesOf(claim).length * LINE;
    const height = claim.kind === 'solution' ? Math.max(lines, 2 * CIRCLE) : lines + 2 * PAD;
    const width = claim.kind === 'solution' ? WIDTH.solution : WIDTH.box;
    graph.setNode(claim.id, { width, height: height + (claim.undeveloped ? 2 * PAD : 0) });
    const lead = (to: Claim, context: boolean): void => {
      add(to);
      graph.setEdge(claim.id, to.id, {});
      edges.push({ from: claim, to, context });
    };
    for (const given of claim.given ?? []) lead(given, true);
    for (const one of below(claim)) lead(one, false);
  };
  add(top);
  layout(graph);
  const { width, height } = graph.graph() as { width: number; height: number };
  // What was added first stands last: turned over, it is read from the top.
  const placed = (id: string): Omit<Element, 'claim' | 'lines'> => {
    const own = graph.node(id) as Record<'x' | 'y' | 'width' | 'height', number>;
    const top = height - own.y - own.height / 2;
    return { x: round(own.x - own.width / 2), y: round(top), width: own.width, height: own.height };
  };
  return {
    ...{ width: round(width), height: round(height) },
    elements: [...claims.values()].map((claim) => ({
      ...placed(claim.id),
      claim,
      lines: linesOf(claim),
    })),
    lines: edges.map(({ from, to, context }) => {
      const [a, b] = [placed(from.id), placed(to.id)];
      const [x, y, ex, ey] = [a.x + a.width, a.y + a.height / 2, b.x, b.y + b.height / 2].map(
        round,
      );
      const middle = round(((x ?? 0) + (ex ?? 0)) / 2);
      return {
        context,
        d: `M${x} ${y}C${middle} ${y} ${middle} ${ey} ${ex} ${ey}`,
        head: `M${ex} ${ey}l-7 -3v6z`,
      };
    }),
  };
}

/** The argument without single hazards, and then each group's, cut where it passes a sheet. */
export function parts(top: Claim): readonly { readonly of: Claim; readonly part: Part }[] {
  const isGroup = ({ href, by = [] }: Claim): boolean => href !== undefined && by.length > 0;
  const groups = (top.by ?? []).flatMap(({ by = [] }) => by).filter(isGroup);
  const overview = drawn(top, (claim) => (groups.includes(claim) ? [] : (claim.by ?? [])));
  return [
    { of: top, part: overview },
    ...groups.flatMap((group) => {
      const some = (hazards: readonly Claim[]): Part =>
        drawn(group, (claim) => (claim === group ? hazards : (claim.by ?? [])));
      const all = group.by ?? [];
      // In as few pieces as fit on a sheet each, about equally long.
      for (let pieces = 1; ; pieces += 1) {
        const size = Math.ceil(all.length / pieces);
        const cut = Array.from({ length: pieces }, (_, nth) =>
          some(all.slice(nth * size, (nth + 1) * size)),
        );
        if (size === 1 || cut.every(({ height }) => height <= MOST))
          return cut.map((part) => ({ of: group, part }));
      }
    }),
  ];
}
