/** Which text files there are, and which sentences belong to a guide's pages. */
import { ownNodes, parseId } from '../guide/ids.ts';
import type { Guide } from '../guide/types.ts';

/** The language that sentences are written in first; the others are made from it. */
export const SOURCE = 'en';

/** Text files of homeowners' pages, besides those of the guides. */
export const ownerTexts = [
  'site',
  'about',
  'note',
  'errors',
  'offline',
  'care',
  'guides',
  'fetching',
] as const;
/** Text files of pages for staff; languages that only homeowners' pages speak have none. */
export const staffTexts = [
  'preview',
  'visits',
  'bench',
  'diagnosis',
  'desk',
  'job',
  'learn',
  'map',
  'round',
  'staff',
] as const;
/** Text files that belong to no guide. */
export const namespaces = [...ownerTexts, ...staffTexts] as const;

/** The text file of the pages of blocks. */
export const BLOCKS = 'blocks';

/** The text file of the model's faults and checks. */
export const MODEL = 'model';

/**
 * A guide's sentences by its nodes' keys: its own, those of the blocks' pages it has, and under
 * `other/…` those of the guides it hands over to.
 * @param blocks the sentences of all blocks' pages
 * @param own a guide's own sentences, by the guide's name
 */
export function joinedText<T>(
  guide: Guide,
  blocks: Readonly<Record<string, T>>,
  own: (guide: string) => Readonly<Record<string, T>>,
): Record<string, T> {
  const has = new Set<string>([...guide.nodes.values()].map(({ sentences }) => sentences));
  const taken = [...has].flatMap((key): [string, T][] => {
    const { guide: other = guide.id, name } = parseId(key);
    const sentences = blocks[name] ?? own(other)[name];
    return sentences === undefined ? [] : [[key, sentences]];
  });
  // Sentences of no page are left in: whoever checks the text's shape tells of them.
  return { ...own(guide.id), ...Object.fromEntries(taken) };
}

/** A guide without the pages of others that it hands over to. */
export function alone(guide: Guide): Guide {
  return { ...guide, nodes: new Map(ownNodes(guide).map((node) => [node.id, node])) };
}
