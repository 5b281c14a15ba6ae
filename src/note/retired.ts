/**
 * What releases 1 to 4 did not freeze, as their guides had it before they were rewritten:
 * `content/retired.json`. Today's guides know nothing of those pages, or mean others by their names.
 */
import type { PageMarks, Release, ReleaseNode } from './release.ts';

export interface RetiredGuide {
  /** Copies of pages are named by their track, `near-plain`; the first track's by the page alone. */
  readonly tracks: readonly string[];
  /** Page → what it and its answers raise and tell, on every track; pages without any are left out. */
  readonly pages: Readonly<Record<string, PageMarks>>;
}

/** Guide → what is kept of it. */
export type Retired = Readonly<Record<string, RetiredGuide>>;

/** A release frozen since then has the track of every question and step, and its own marks. */
export function isWhole({ guides }: Release): boolean {
  return guides.some(({ nodes }) => nodes.some(({ track }) => track !== undefined));
}

/** The release with page, track and marks of every node, whenever it was frozen. */
export function completed(release: Release, retired: Retired): Release {
  if (isWhole(release)) return release;
  return {
    ...release,
    guides: release.guides.map((guide) => {
      const known = Object.hasOwn(retired, guide.id) ? retired[guide.id] : undefined;
      return known ? { ...guide, nodes: guide.nodes.map((node) => marked(node, known)) } : guide;
    }),
  };
}

function marked(node: ReleaseNode, { tracks, pages }: RetiredGuide): ReleaseNode {
  const place = placeOf(node, tracks);
  const page = place.page ?? node.id;
  return { ...node, ...place, ...(Object.hasOwn(pages, page) ? { marks: pages[page] } : {}) };
}

function placeOf(
  { id, answers }: ReleaseNode,
  [main, ...others]: readonly string[],
): Pick<ReleaseNode, 'page' | 'track'> {
  if (!answers) return {};
  const track = others.find((other) => id.endsWith(`-${other}`));
  return track === undefined ? { track: main } : { page: id.slice(0, -track.length - 1), track };
}
