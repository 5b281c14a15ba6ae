/**
 * Note books made ready for reading and writing: names resolved to nodes, and the
 * journeys counted. Releases are trusted here (our own build output in a browser,
 * checked by `release-schema.ts` wherever they come from a file).
 */
import type { AnswerId, GuideId, NodeId, NodeKind, TextId, Urgency } from '../guide/types.ts';
import type { Release, ReleaseDetail, ReleaseGuide } from './release.ts';

/** An answer with its share of the numbering: see `ways.ts`. */
export interface Way {
  readonly answer: AnswerId;
  readonly to: BookNode;
  /** Journeys that come before the first one taking this way, stopping at the node included. */
  readonly before: bigint;
}

export interface BookNode {
  readonly id: NodeId;
  readonly text: TextId;
  readonly kind: NodeKind;
  readonly urgency: Urgency;
  /** The node's own answers, then the exits. */
  readonly ways: readonly Way[];
  readonly byAnswer: ReadonlyMap<string, Way>;
  /** Journeys from here on: stopping here, and all that follow each way. */
  readonly journeys: bigint;
}

export interface BookGuide {
  readonly id: GuideId;
  readonly start: BookNode;
  readonly nodes: ReadonlyMap<NodeId, BookNode>;
}

export interface Book {
  readonly release: number;
  /** ISO 8601 date. */
  readonly published: string;
  readonly details: readonly ReleaseDetail[];
  readonly guides: readonly BookGuide[];
}

/** Release number → its book. */
export type Library = ReadonlyMap<number, Book>;

/** Make books of releases. */
export function makeLibrary(releases: readonly Release[]): Library {
  return new Map(releases.map((release) => [release.release, makeBook(release)]));
}

/** The highest release number of a library, undefined for an empty one. */
export function newestRelease(library: Library): number | undefined {
  return library.size === 0 ? undefined : Math.max(...library.keys());
}

/** The guide of a book by its name. */
export function bookGuide(book: Book, guide: string): BookGuide | undefined {
  return book.guides.find(({ id }) => id === guide);
}

function makeBook({ release, published, details, guides }: Release): Book {
  return { release, published, details, guides: guides.map(makeGuide) };
}

/**
 * Count journeys from the ends backwards: N(v) = 1 + Σ N(to) over v's ways. One visit
 * a node; the depth of the recursion is the longest journey.
 */
function makeGuide(guide: ReleaseGuide): BookGuide {
  const frozen = new Map(guide.nodes.map((node) => [node.id, node]));
  const made = new Map<string, BookNode>();
  const make = (id: string): BookNode => {
    const known = made.get(id);
    if (known) return known;
    const node = frozen.get(id);
    if (!node) throw new RangeError(id);
    const own = node.answers ?? [];
    const names = new Set(own.map(([answer]) => answer));
    const open = node.kind === 'question' || node.kind === 'step';
    const exits =
      open && id !== guide.start ? guide.exits.filter(([answer]) => !names.has(answer)) : [];
    let journeys = 1n;
    const ways = [...own, ...exits].map(([answer, target]): Way => {
      const to = make(target);
      const before = journeys;
      journeys += to.journeys;
      return { answer: answer as AnswerId, to, before };
    });
    const ready: BookNode = {
      id: node.id as NodeId,
      text: (node.text ?? node.id) as TextId,
      kind: node.kind,
      urgency: node.urgency ?? 'none',
      ways,
      byAnswer: new Map(ways.map((way) => [way.answer, way])),
      journeys,
    };
    made.set(id, ready);
    return ready;
  };
  const start = make(guide.start);
  const nodes = guide.nodes.map(({ id }) => make(id));
  return { id: guide.id as GuideId, start, nodes: new Map(nodes.map((node) => [node.id, node])) };
}
