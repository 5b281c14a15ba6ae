import { prove } from '../../src/proof/prove.ts';
import type {
  Answer,
  AnswerId,
  Fact,
  Guide,
  GuideId,
  GuideNode,
  NodeId,
  TextId,
} from '../../src/guide/types.ts';
import { median } from './repeat.ts';
import type { Row } from './row.ts';

/** A guide stays within 25 answers, so a large one is wide: layers of equally many pages. */
const LAYERS = 22;
const ANSWERS = 4;
const DANGERS = 7;

function node(id: string, kind: GuideNode['kind'], answers: readonly Answer[] = []): GuideNode {
  const end = kind === 'stop' || kind === 'finish';
  return {
    id: id as NodeId,
    guide: 'synthetic' as GuideId,
    page: id,
    sentences: id as TextId,
    kind,
    answers,
    ...(kind === 'step' ? { action: 'look' } : {}),
    heat: false,
    takesError: false,
    call: kind === 'stop' ? ['emergency', 'technician'] : [],
    urgency: end ? 'emergency' : 'none',
    breakerStaysOff: false,
  };
}

function answer(id: string, to: string, sets: readonly Fact[] = []): Answer {
  return { id: id as AnswerId, to: to as NodeId, sets, clears: [] };
}

/**
 * A sound guide of about `size` pages: layers of questions and steps whose answers lead
 * to pages spread over the next layer, so that nearly all orders of facts meet. The
 * spread is fixed: each page's answers lead to the pages around three times its own place.
 */
export function syntheticGuide(size: number): Guide {
  const width = Math.max(2, Math.round((size - DANGERS - 4) / LAYERS));
  const name = (layer: number, place: number): string => `page-${layer}-${place % width}`;
  const dangers = Array.from({ length: DANGERS }, (_, i) => `danger-${i}`);
  const nodes: GuideNode[] = [
    node('start', 'question', [
      ...dangers.map((id) => answer(id, `stop-${id}`)),
      answer('unsure', 'stop-unsure'),
      answer('none', 'hall'),
    ]),
    node('hall', 'question', [
      ...Array.from({ length: width }, (_, i) => answer(`way-${i}`, name(0, i))),
      answer('unsure', name(0, 0)),
    ]),
  ];
  for (let layer = 0; layer < LAYERS; layer += 1)
    for (let place = 0; place < width; place += 1) {
      const next = (turn: number): string =>
        layer === LAYERS - 1 ? 'end' : name(layer + 1, 3 * place + turn);
      nodes.push(
        node(name(layer, place), layer % 2 === 0 ? 'question' : 'step', [
          ...Array.from({ length: ANSWERS - 1 }, (_, turn) =>
            answer(`answer-${turn}`, next(turn), turn === 0 ? ['cooled'] : []),
          ),
          // The neighbour below is reached whatever the width, so no page is out of reach.
          answer('unsure', layer === LAYERS - 1 ? 'end' : name(layer + 1, place)),
        ]),
      );
    }
  for (const id of [...dangers, 'unsure'])
    nodes.push({ ...node(`stop-${id}`, 'stop'), danger: id as AnswerId });
  nodes.push({ ...node('end', 'finish'), urgency: 'none' });
  return {
    id: 'synthetic' as GuideId,
    start: 'start' as NodeId,
    nodes: new Map(nodes.map((one) => [one.id, one])),
    exits: dangers.map((id) => answer(id, `stop-${id}`)),
    flags: [],
    tracks: ['only'],
  };
}

const SIZES = [100, 1000, 2000, 10_000, 100_000] as const;
const CEILING_AT = 2000;
const CEILING_MS = 1000;
/** 1 is linear; larger guides leave the processor's caches, which costs a little more a page. */
const MOST_EXPONENT = 1.25;

/** Least-squares slope of log time over log size: 1 where time is linear in the guide. */
function exponent(points: readonly { readonly size: number; readonly ms: number }[]): number {
  const logs = points.map(({ size, ms }) => [Math.log(size), Math.log(ms)] as const);
  const mean = (at: 0 | 1): number => logs.reduce((sum, pair) => sum + pair[at], 0) / logs.length;
  const [x, y] = [mean(0), mean(1)];
  const over = logs.reduce((sum, [a, b]) => sum + (a - x) * (b - y), 0);
  return over / logs.reduce((sum, [a]) => sum + (a - x) ** 2, 0);
}

/** Time of the structural proof by size of the guide, and how it grows. */
export function benchProve(): Promise<Row[]> {
  // The engine compiles what runs often; the first runs measure that and not the proof.
  for (let run = 0; run < 20; run += 1) prove(syntheticGuide(1000));
  const points = SIZES.map((size) => {
    const guide = syntheticGuide(size);
    const runs = size >= 100_000 ? 3 : 7;
    const times = Array.from({ length: runs }, () => {
      const begin = performance.now();
      const { holds } = prove(guide);
      const ms = performance.now() - begin;
      if (!holds) throw new Error(`The synthetic guide of ${size} pages does not hold`);
      return ms;
    });
    return { size: guide.nodes.size, asked: size, ms: median(times) };
  });
  return Promise.resolve([
    ...points.map(({ size, asked, ms }) => ({
      name: `prove a guide of ${size} pages`,
      value: ms,
      unit: 'ms',
      ...(asked === CEILING_AT ? { ceiling: CEILING_MS } : {}),
    })),
    // 100 pages are over before the clock is sure of it.
    {
      name: 'exponent of the proof’s time in pages, 1,000 to 100,000',
      value: exponent(points.filter(({ asked }) => asked >= 1000)),
      unit: '',
      ceiling: MOST_EXPONENT,
    },
  ]);
}
