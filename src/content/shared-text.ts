import { split } from '../guide/ids.ts';
import type { Guide } from '../guide/types.ts';

/**
 * A guide's sentences by its nodes' keys: its own, those of the shared danger pages it has,
 * and under `other/…` those of the guides it hands over to. A guide's own sentence takes
 * the place of a shared one of the same name.
 * @param own a guide's own sentences, by the guide's name
 */
export function joinedText<T>(
  guide: Guide,
  shared: Readonly<Record<string, T>>,
  own: (guide: string) => Readonly<Record<string, T>>,
): Record<string, T> {
  const has = new Set<string>([...guide.nodes.values()].map(({ sentences }) => sentences));
  const taken = [...has].flatMap((key): [string, T][] => {
    const { guide: other = guide.id, name } = split(key);
    const sentences = own(other)[name] ?? shared[name];
    return sentences === undefined ? [] : [[key, sentences]];
  });
  // Sentences of no page are left in: whoever checks the text's shape tells of them.
  return { ...own(guide.id), ...Object.fromEntries(taken) };
}
