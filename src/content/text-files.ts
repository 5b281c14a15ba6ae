import { models } from './load.ts';
import { languageOf } from './languages.ts';

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
export const staffTexts = ['preview', 'visits', 'bench', 'diagnosis', 'desk', 'round'] as const;
/** Text files that belong to no guide. */
export const namespaces = [...ownerTexts, ...staffTexts] as const;

/** The text file of a guide's own faults, checks and reasons. */
export function faultTexts(guide: string): string {
  return `${guide}.faults`;
}

/** The text files of a language that do not follow a guide's pages. */
export function textsOf(language: string): readonly string[] {
  const { staff } = languageOf(language);
  return staff ? [...namespaces, ...Object.keys(models()).map(faultTexts)] : ownerTexts;
}
