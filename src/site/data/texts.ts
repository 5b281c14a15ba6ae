import { guidesOf } from '../../guide/ids.ts';
import type { Guide } from '../../guide/types.ts';
import type { NodeText } from '../../content/schema/guide-text.ts';
import { namespaceText } from '../words.ts';

/** A guide and those it hands over to, by name. */
export function withHandOvers(guide: Guide): readonly string[] {
  return [guide.id, ...guidesOf(guide)];
}

function partsOf(
  language: string,
  namespace: string,
  parts: readonly (keyof NodeText)[],
): Record<string, unknown> {
  return Object.fromEntries(
    Object.entries(namespaceText(language, namespace)).map(([text, sentences]) => [
      text,
      Object.fromEntries(
        parts.flatMap((part) => {
          const sentence = (sentences as NodeText)[part];
          return sentence === undefined ? [] : [[part, sentence]];
        }),
      ),
    ]),
  );
}

/**
 * Parts of every node's sentences, under the names of the guide and of those it hands over to.
 * @param namespace where a guide's sentences are taken from
 */
export function guideTexts(
  language: string,
  guide: Guide,
  parts: readonly (keyof NodeText)[],
  namespace = (id: string): string => id,
): Record<string, unknown> {
  return Object.fromEntries(
    withHandOvers(guide).map((id) => [id, partsOf(language, namespace(id), parts)] as const),
  );
}
