/** A guide's map with its words in a language, placed. */
import { guideName, nodeWords } from '../app/shared/content-words.ts';
import { boxOf, mapOf } from '../guide/map.ts';
import type { Arrow, GuideMap, Way } from '../guide/map.ts';
import type { Guide, GuideNode } from '../guide/types.ts';
import { layOut, wrapped } from './map-layout.ts';
import type { Strip } from './map-layout.ts';
import { nodeText, words } from './words.ts';

/** Letters a line of an arrow's words. */
const ARROW_LETTERS = 17;

/** What kind of page a box is: an end's with its urgency. */
export function kindWords(language: string, { kind, urgency }: GuideNode): string {
  const { t } = words(language);
  return t(`map:kinds.${kind}`, { urgency: t(`map:urgency.${urgency}`) });
}

/** What an answer says. */
export function wayWords(language: string, guide: Guide, from: GuideNode, way: Way): string {
  const { answers = {} } = nodeText(language, guide, from.sentences);
  return answers[way.answer.id] ?? way.answer.id;
}

/**
 * How far each box is from the start: questions and steps behind all that lead to them on any
 * track, ends right behind the first that does.
 */
function layersOf(guide: Guide, arrows: readonly Arrow[]): ReadonlyMap<string, number> {
  const steps = new Map<GuideNode, number>();
  const visit = (node: GuideNode, step: number): void => {
    if ((steps.get(node) ?? -1) >= step) return;
    steps.set(node, step);
    for (const next of nextOf(node)) visit(next, step + 1);
  };
  const nextOf = ({ answers, guide: of }: GuideNode): GuideNode[] =>
    of === guide.id ? answers.flatMap(({ to }) => guide.nodes.get(to) ?? []) : [];
  const start = guide.nodes.get(guide.start);
  if (start) visit(start, 0);
  const layers = new Map<string, number>();
  for (const [node, step] of steps)
    if (nextOf(node).length > 0)
      layers.set(boxOf(guide, node), Math.max(layers.get(boxOf(guide, node)) ?? 0, step));
  const goesOn = new Set(arrows.map(({ from }) => from));
  for (const { from, to } of arrows)
    if (!goesOn.has(to))
      layers.set(to, Math.min(layers.get(to) ?? Infinity, (layers.get(from) ?? 0) + 1));
  return layers;
}

export interface DrawnMap extends GuideMap {
  /** Box → its number in the drawing, in reading order. */
  readonly numbers: ReadonlyMap<string, number>;
  readonly strips: readonly Strip[];
}

/** The map of a guide. A page that only danger answers lead to is in the list of those, not drawn. */
export function drawnMap(language: string, guide: Guide): DrawnMap {
  const say = words(language);
  const map = mapOf(guide);
  const layers = layersOf(guide, map.arrows);
  const met = new Set(map.arrows.flatMap(({ from, to }) => [from, to]));
  const drawn = [...map.boxes]
    .filter(([id]) => met.has(id))
    .map(([id, node]) => ({ id, node, layer: layers.get(id) ?? 0 }))
    .toSorted((a, b) => a.layer - b.layer);
  const numbers = new Map(drawn.map(({ id }, index) => [id, index + 1]));
  const boxes = drawn.map(({ id, node, layer }) => {
    const own = node.guide === guide.id;
    const kind = own
      ? kindWords(language, node)
      : say.t('map:other', { guide: guideName(say, node.guide) });
    const name = nodeWords(say, guide, node).short;
    const number = String(numbers.get(id));
    const heading = wrapped(`${number}. ${kind}`);
    const stop = node.kind === 'stop' ? `${kind}.` : '';
    return {
      ...{ id, layer, heading: heading.length, lines: [...heading, ...wrapped(name)] },
      reference: wrapped(`→ ${number}. ${stop} ${name}`, 3, ARROW_LETTERS),
    };
  });
  const arrows = map.arrows.map(({ from, to, ways, every }) => {
    const node = map.boxes.get(from);
    const told = ways.map((way) =>
      way.answer.id === 'unsure' || !node
        ? [`• ${say.t('map:unsure')}`]
        : wrapped(`• ${wayWords(language, guide, node, way)}`, 2, ARROW_LETTERS),
    );
    // Answers of the same tracks follow each other, and their tracks are told once.
    const byTracks = Map.groupBy(told.keys(), (index) => ways[index]?.tracks.join(', ') ?? '');
    const lines = [...byTracks].flatMap(([tracks, own]) => [
      ...(tracks === '' ? [] : wrapped(`${tracks}:`, Infinity, ARROW_LETTERS)),
      ...own.flatMap((index) => told[index] ?? []),
    ]);
    const reference = boxes.find(({ id }) => id === to)?.reference ?? [];
    return { from, to, lines: every ? [] : lines, reference };
  });
  return { ...map, numbers, strips: layOut({ boxes, arrows }) };
}
