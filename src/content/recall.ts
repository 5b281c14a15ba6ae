import { ownNodes } from '../guide/ids.ts';
import type { Guide } from '../guide/types.ts';
import type { Release } from '../note/release.ts';
import type { RecallFile } from './schema/recall.ts';

/** What keeps a recall from being published: it would stop copies that nothing can replace. */
export type RecallTrouble =
  | { readonly code: 'recall-above'; readonly least: number; readonly newest: number }
  /** `at` is its place in the list. */
  | { readonly code: 'recall-page'; readonly page: string; readonly at: number };

/** The troubles of a recall: no release above the newest, no page that no release ever had. */
export function recallTroubles(
  { least, pages }: RecallFile,
  guides: readonly Guide[],
  releases: readonly Release[],
): readonly RecallTrouble[] {
  const newest = releases.length;
  const had = new Set([
    '/',
    ...guides.flatMap((guide) => [
      `/${guide.id}/`,
      ...ownNodes(guide).map(({ id }) => `/${guide.id}/${id}/`),
    ]),
    ...releases.flatMap((release) =>
      release.guides.flatMap(({ id, nodes }) => [
        `/${id}/`,
        ...nodes.map((node) => `/${id}/${node.id}/`),
      ]),
    ),
  ]);
  return [
    ...(least > newest ? [{ code: 'recall-above', least, newest } as const] : []),
    ...pages.flatMap((page, at) =>
      had.has(page) ? [] : [{ code: 'recall-page', page, at } as const],
    ),
  ];
}
