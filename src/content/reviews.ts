/** The version of a guide that a reviewer signs, and which signatures still hold. */
import { createHash } from 'node:crypto';
import { ownNodes } from '../guide/ids.ts';
import { isRecord } from '../guide/shape.ts';
import type { Guide } from '../guide/types.ts';
import type { Review } from './schema/reviews.ts';

/** The same text for the same value, whatever order its keys were written in. */
function canonical(value: unknown): string {
  return JSON.stringify(value, (_, inner: unknown): unknown =>
    isRecord(inner)
      ? Object.fromEntries(Object.entries(inner).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : inner,
  );
}

/**
 * A guide's version: the first 12 hex digits of the SHA-256 of its compiled pages, each with its
 * answers, and their English sentences, in canonical order. It changes when a page, an answer, a
 * target, a flag or a sentence does, and when answers or lines change places, which a reader would see. It
 * does not when files are only ordered, laid out or commented anew. The pages of guides it hands
 * over to have versions of their own; `rules` are held by the proof at every build, not by a signature.
 *
 * @param sentences in English, by the key of each page's sentences; others are passed over
 */
export function guideVersion(guide: Guide, sentences: Readonly<Record<string, unknown>>): string {
  const { id, start, tracks } = guide;
  const pages = Object.fromEntries(
    ownNodes(guide).map((node) => [node.id, { node, said: sentences[node.sentences] }] as const),
  );
  const signed = canonical({ id, start, tracks, pages });
  return createHash('sha256').update(signed).digest('hex').slice(0, 12);
}

/** A guide's signatures, the newest first: those for this version, and those for earlier ones. */
export function signatures(
  reviews: readonly Review[],
  guide: string,
  version: string,
): { readonly current: readonly Review[]; readonly stale: readonly Review[] } {
  const own = reviews.filter((review) => review.guide === guide).toReversed();
  return {
    current: own.filter(({ hash }) => hash === version),
    stale: own.filter(({ hash }) => hash !== version),
  };
}
