import type { Guide, TextId } from '../guide/types.ts';
import { PRACTICE, careParts, careTextSchema } from '../content/schema/care.ts';
import type { CarePage, CareText } from '../content/schema/care.ts';
import { carePages, checked, sources } from '../content/load.ts';
import { namespaceText } from './words.ts';

/** The sentences of a care page with the firm's facts filled in; a broken page ends the build. */
export function careText(language: string, page: CarePage): CareText {
  const { topics } = namespaceText(language, 'care') as { topics: Record<string, unknown> };
  const text = checked(careTextSchema, topics[page.id], `text/${language}/care.json, ${page.id}`);
  const known = new Set([PRACTICE, ...Object.keys(sources())]);
  const unknown = careParts.flatMap((part) => text[part]).find(({ from }) => !known.has(from));
  if (unknown)
    throw new Error(
      `content/text/${language}/care.json names the source "${unknown.from}", which content/sources.json does not have.`,
    );
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
