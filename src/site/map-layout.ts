/**
 * Where the boxes, words and arrows of a guide's map stand. The drawing is written in strips, as
 * text is in lines: each is read from left to right and is as wide as a letter sheet. An arrow
 * into another strip, or back, ends in a reference to the box it leads to, so that no line leaves a strip.
 */
import { Graph, layout } from '@dagrejs/dagre';
import type { Point } from '@dagrejs/dagre';

/** Units: text is 11 high, a line 13. A letter counts as 6.4 wide, the mean of DejaVu Sans. */
const LETTER = 6.4;
export const LINE = 13;
export const TEXT = 11;
const PAD = 7;
const BOX_LETTERS = 19;
/** Points (1/72 inch) a unit on paper: text is 7.15 points high there. */
export const SCALE = 0.65;
/** A sheet of letter paper with margins of 0.4 inch, in units. */
export const SHEET = { width: (7.7 * 72) / SCALE, height: (10 * 72) / SCALE };

/** What is to be placed: what stands in boxes, in order of their layers, and on arrows, in lines. */
export interface Drawn {
  /** `layer`: how far from the start. */
  readonly boxes: readonly {
    readonly id: string;
    readonly layer: number;
    /** How many of the lines say what the box is. */
    readonly heading: number;
    readonly lines: readonly string[];
  }[];
  readonly arrows: readonly {
    readonly from: string;
    readonly to: string;
    readonly lines: readonly string[];
    /** What stands below the words where the box it leads to is in another strip, or not further on. */
    readonly reference: readonly string[];
  }[];
}

/** A rectangle by its left upper corner, with what it says. */
export interface Placed {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly lines: readonly string[];
}

/** Where a line crosses a layer: level from one side of it to the other. It bends between layers only. */
export interface Level {
  readonly from: number;
  readonly to: number;
  readonly y: number;
}

export interface Strip {
  readonly width: number;
  readonly height: number;
  readonly boxes: readonly (Placed & { readonly id: string; readonly heading: number })[];
  /** Lines from the box to the words, and from there to the other box; one of them may be all. */
  readonly arrows: readonly {
    readonly from: string;
    readonly to: string;
    readonly words?: Placed;
    readonly lines: readonly (readonly Level[])[];
    readonly refers: boolean;
  }[];
}

/** Words in lines of at most so many letters; what passes the last line ends in an ellipsis. */
export function wrapped(text: string, most = Infinity, letters = BOX_LETTERS): string[] {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const longer = `${lines.at(-1) ?? ''} ${word}`;
    if (lines.length > 0 && longer.length <= letters) lines[lines.length - 1] = longer;
    else lines.push(word);
  }
  if (lines.length <= most) return lines;
  return [...lines.slice(0, most - 1), `${(lines[most - 1] ?? '').slice(0, letters - 1)}…`];
}

/** The boxes of some layers and the arrows that leave them. */
function stripOf(boxes: Drawn['boxes'], all: Drawn['arrows']): Strip {
  const graph = new Graph();
  graph.setGraph({ rankdir: 'LR', nodesep: 8, edgesep: 6, ranksep: 18, marginx: 4, marginy: 6 });
  graph.setDefaultEdgeLabel(() => ({}));
  const add = (id: string, lines: readonly string[], letters: number, pad: number): void => {
    graph.setNode(id, { width: letters * LETTER + pad, height: lines.length * LINE + pad });
  };
  const inside = new Map(boxes.map(({ id, layer }) => [id, layer]));
  for (const { id, lines } of boxes) add(id, lines, BOX_LETTERS, 2 * PAD);
  const arrows = all
    .filter(({ from }) => inside.has(from))
    .map(({ from, to, lines, reference }) => {
      const refers = (inside.get(to) ?? 0) <= (inside.get(from) ?? 0);
      return { from, to, refers, said: refers ? [...lines, ...reference] : lines };
    });
  const wordsOf = (from: string, to: string): string => `${from} → ${to}`;
  for (const { from, to, said, refers } of arrows) {
    const words = wordsOf(from, to);
    if (said.length > 0) {
      add(words, said, Math.max(...said.map(({ length }) => length)), 3);
      // Words stand where their arrow begins, however far it goes.
      graph.setEdge(from, words, { weight: 8 });
    }
    if (!refers) graph.setEdge(said.length > 0 ? words : from, to, {});
  }
  layout(graph);
  const node = (id: string) => graph.node(id) as Omit<Placed, 'lines'>;
  const placed = (id: string, lines: readonly string[]): Placed => {
    const { x, y, width, height } = node(id);
    return { x: x - width / 2, y: y - height / 2, width, height, lines };
  };
  // All of a layer stand around one middle; its sides are those of the widest.
  const sides = new Map<number, number>();
  for (const { x, width } of graph.nodes().map(node))
    sides.set(Math.round(x), Math.max(sides.get(Math.round(x)) ?? 0, width / 2));
  const half = ({ x }: Point): number => sides.get(Math.round(x)) ?? 0;
  const line = (from: string, to: string): Level[] => {
    const [start, end] = [node(from), node(to)];
    const { points } = graph.edge(from, to) as { points: Point[] };
    return [
      { from: start.x + start.width / 2, to: start.x + half(start), y: start.y },
      ...points
        .slice(1, -1)
        .filter((point) => half(point) > 0)
        .map((point) => ({ from: point.x - half(point), to: point.x + half(point), y: point.y })),
      { from: end.x - half(end), to: end.x - end.width / 2, y: end.y },
    ];
  };
  const { width, height } = graph.graph() as { width: number; height: number };
  return {
    ...{ width, height },
    boxes: boxes.map(({ id, heading, lines }) => ({ ...placed(id, lines), id, heading })),
    arrows: arrows.map(({ from, to, said, refers }): Strip['arrows'][number] => {
      if (said.length === 0) return { from, to, refers, lines: [line(from, to)] };
      const words = wordsOf(from, to);
      const rest = refers ? [] : [line(words, to)];
      return { from, to, refers, words: placed(words, said), lines: [line(from, words), ...rest] };
    }),
  };
}

/** The boxes by layers; a layer higher than a sheet is cut where a sheet ends. */
function layersOf({ boxes, arrows }: Drawn): readonly Drawn['boxes'][] {
  const fits = (own: Drawn['boxes']): boolean => stripOf(own, arrows).height <= SHEET.height;
  return [...Map.groupBy(boxes, ({ layer }) => layer).values()].flatMap((layer) => {
    if (fits(layer)) return [layer];
    const cut: Drawn['boxes'][number][][] = [];
    for (const box of layer) {
      const last = cut.at(-1);
      if (last && fits([...last, box])) last.push(box);
      else cut.push([box]);
    }
    return cut;
  });
}

/** Places everything, in strips of as many layers as go on a sheet; the same input, the same drawing. */
export function layOut(drawn: Drawn): readonly Strip[] {
  const layers = layersOf(drawn);
  const strips: Strip[] = [];
  for (let first = 0; first < layers.length;) {
    const upTo = (end: number): Strip => stripOf(layers.slice(first, end).flat(), drawn.arrows);
    let end = first + 1;
    let strip = upTo(end);
    while (end < layers.length) {
      const longer = upTo(end + 1);
      if (longer.width > SHEET.width || longer.height > SHEET.height) break;
      strip = longer;
      end += 1;
    }
    strips.push(strip);
    first = end;
  }
  return strips;
}
