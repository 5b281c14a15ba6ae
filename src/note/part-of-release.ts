import { parseId } from '../guide/ids.ts';
import type { Release, ReleaseGuide } from './release.ts';

/** The guides a guide hands over to, and those they do, itself first. */
export function closureOf(release: Release, guide: string): readonly string[] {
  const found = new Set([guide]);
  // A Set's iterator also visits what is added while it runs.
  for (const id of found)
    for (const { answers = [] } of release.guides.find((one) => one.id === id)?.nodes ?? [])
      for (const [, to] of answers) {
        const { guide: other } = parseId(to);
        if (other !== undefined) found.add(other);
      }
  return [...found];
}

/** Keeps a guide's place in the codebook, and with it every code's meaning; it has no journeys. */
function placeholder({ id }: ReleaseGuide): ReleaseGuide {
  return { id, start: 'absent', nodes: [{ id: 'absent', kind: 'stop' }], exits: [] };
}

/** What only staff's pages show is no matter of a homeowner's; a code needs no page or track. */
function unmarked(guide: ReleaseGuide): ReleaseGuide {
  const nodes = guide.nodes.map(({ marks: _, page: _page, track: _track, ...node }) => node);
  return { ...guide, nodes };
}

/**
 * A release with all that codes of one guide need and no more: what a note page loads of it. The
 * other guides keep only their places, so that a code written with it is the whole release's.
 * @param marked with what staff's pages show
 */
export function partOfRelease(release: Release, guide: string, marked = false): Release {
  const needed = new Set(closureOf(release, guide));
  const kept = (one: ReleaseGuide) => (marked ? one : unmarked(one));
  return {
    ...release,
    guides: release.guides.map((one) => (needed.has(one.id) ? kept(one) : placeholder(one))),
  };
}
