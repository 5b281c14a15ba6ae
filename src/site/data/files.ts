/**
 * What pages load only when they need it: one file a page and guide, named by its content. The
 * pages carry the files' addresses, and the worker keeps the files with the rest of the site.
 */
import type { Guide } from '../../guide/types.ts';
import { eachOnce } from '../../once.ts';
import { address } from '../addresses.ts';
import { guidesInOrder } from '../finder.ts';
import { hashedName } from '../hashed.ts';
import { languageOf, releases } from '../../content/load.ts';
import { partOfRelease } from '../../note/part-of-release.ts';
import { deskPart } from './desk-part.ts';
import { notePart } from './note-part.ts';
import { previewPart } from './preview-part.ts';

/** Where the build puts all files named by their content: hosts and browsers keep these for good. */
export const DATA_FOLDER = '_astro';

/** `book` is what codes of a guide need of the newest release. */
export type PartOf = 'note' | 'preview' | 'desk' | 'book';
const makers: Record<PartOf, (language: string, guide: Guide) => object> = {
  note: notePart,
  preview: previewPart,
  desk: deskPart,
  book: (_, { id }) =>
    releases()
      .slice(-1)
      .map((release) => partOfRelease(release, id, true)),
};

export interface DataFile {
  readonly page: PartOf;
  readonly guide: string;
  /** Its folder's language and its own name, without `.json`: a device keeps one language. */
  readonly name: string;
  readonly json: string;
}

/** Figures are assumptions: the sixth digit of one says nothing, and weighs. */
const rounded = (_: string, value: unknown) =>
  typeof value === 'number' ? Number(value.toPrecision(6)) : value;

/** All such files of a language, the main guide's first. */
export const dataFiles = eachOnce((language: string): readonly DataFile[] => {
  const pages = Object.entries(makers).filter(
    ([page]) => page === 'note' || languageOf(language).staff,
  );
  return pages.flatMap(([page, make]) =>
    guidesInOrder().map((guide): DataFile => {
      const json = JSON.stringify(make(language, guide), rounded);
      const name = `${language}/${hashedName(`${guide.id}.${page}`, json)}`;
      return { page: page as PartOf, guide: guide.id, name, json };
    }),
  );
});

/**
 * Guide → its file's address, from a page one folder below its language's root.
 * @param at the page's language, where it is another
 */
export function filesFor(language: string, page: PartOf, at = language): Record<string, string> {
  const up = address(at, '') === '/' ? '..' : '../..';
  const own = dataFiles(language).filter((file) => file.page === page);
  return Object.fromEntries(
    own.map(({ guide, name }) => [guide, `${up}/${DATA_FOLDER}/${name}.json`]),
  );
}
