import type { Guide, TextId } from '../guide/types.ts';
import { PRACTICE, careParts } from '../content/schema/care.ts';
import type { CarePage, CareText } from '../content/schema/care.ts';
import { carePages } from '../content/load.ts';
import { namespaceText } from './words.ts';

/** The sentences of a care page with the firm's facts filled in. */
export function careText(language: string, page: CarePage): CareText {
  const { topics } = namespaceText(language, 'care') as {
    topics: Record<CarePage['id'], CareText | undefined>;
  };
  const text = topics[page.id];
  if (!text) throw new Error(`No sentences for the care page "${page.id}" in ${language}.`);
  return text;
}

/** The published sources of a page, in the order it first names them; numbered from 1 as shown. */
export function sourcesOf(text: CareText): readonly string[] {
  const named = careParts.flatMap((part) => text[part].map(({ from }) => from));
  return [...new Set(named)].filter((from) => from !== PRACTICE);
}

/** The care page that a guide's page leads to, where one does. */
export function careFor(guide: Guide, text: TextId): CarePage | undefined {
  return carePages().find(({ from }) =>
    from.some((page) => page === `${guide.id}/${text}` || page === `*/${text}`),
  );
}
