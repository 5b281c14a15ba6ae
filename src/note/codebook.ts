/**
 * Codebooks made ready for reading and writing: names resolved to nodes, and the
 * journeys counted. Releases are trusted here (our own build output in a browser,
 * checked by `release-schema.ts` wherever they come from a file).
 */
import type {
  Answer,
  AnswerId,
  Graph,
  GraphNode,
  GuideId,
  NodeId,
  TextId,
} from '../guide/types.ts';
import { qualifyOther, parseId, qualify } from '../guide/ids.ts';
import type {
  PageMarks,
  Release,
  ReleaseAnswer,
  ReleaseDetail,
  ReleaseGuide,
  ReleaseNode,
} from './release.ts';

/** An answer with its share of the numbering: see `edges.ts`. */
export interface Edge {
  readonly answer: AnswerId;
  readonly to: CodebookNode;
  /** Journeys that come before the first one taking this way, stopping at the node included. */
  readonly before: bigint;
}

export interface CodebookNode extends GraphNode {
  /** The node's own answers, then the exits. */
  readonly edges: readonly Edge[];
  readonly byAnswer: ReadonlyMap<string, Edge>;
  /** Journeys from here on: stopping here, and all that follow each way. */
  readonly journeys: bigint;
}

export interface CodebookGuide extends Graph<CodebookNode> {
  /** The node it starts at. */
  readonly first: CodebookNode;
}

export interface Codebook {
  readonly release: number;
  /** ISO 8601 date. */
  readonly published: string;
  readonly details: readonly ReleaseDetail[];
  readonly guides: readonly CodebookGuide[];
}

/** Release number → its codebook. */
export type Codebooks = ReadonlyMap<number, Codebook>;

/**
 * Make codebooks of releases.
 * @param flags all there are, in the order staff see them; without them no journey shows any:
 *   enough to read and write codes, and to follow a journey
 */
export function makeCodebooks(
  releases: readonly Release[],
  flags: readonly string[] = [],
): Codebooks {
  return new Map(releases.map((release) => [release.release, makeCodebook(release, flags)]));
}

/** The highest release number of a library, undefined for an empty one. */
export function newestRelease(codebooks: Codebooks): number | undefined {
  return codebooks.size === 0 ? undefined : Math.max(...codebooks.keys());
}

/** The guide of a codebook by its name. */
export function codebookGuide(codebook: Codebook, guide: string): CodebookGuide | undefined {
  return codebook.guides.find(({ id }) => id === guide);
}

function makeCodebook(
  { release, published, details, guides }: Release,
  flags: readonly string[],
): Codebook {
  return { release, published, details, guides: makeGuides(guides, flags) };
}

/** A release's guides, each joined with what its journeys reach of the others. */
function makeGuides(guides: readonly ReleaseGuide[], flags: readonly string[]): CodebookGuide[] {
  const frozen = new Map<string, ReleaseNode>(
    guides.flatMap(({ id: guide, nodes }) =>
      nodes.map((node) => [qualifyOther(guide, node.id), node]),
    ),
  );
  return guides.map((guide) => makeGuide(guide, frozen, flags));
}

/**
 * Count journeys from the ends backwards: N(v) = 1 + Σ N(to) over v's ways. One visit
 * a node; the depth of the recursion is the longest journey. `frozen` are the nodes of
 * all guides by `guide/node`, as in `src/guide/join.ts`.
 */
function makeGuide(
  guide: ReleaseGuide,
  frozen: ReadonlyMap<string, ReleaseNode>,
  flags: readonly string[],
): CodebookGuide {
  const made = new Map<string, CodebookNode>();
  const make = (id: string): CodebookNode => {
    const already = made.get(id);
    if (already) return already;
    const { guide: other } = parseId(id);
    const named = (name: string): string =>
      other === undefined ? name : qualifyOther(other, name);
    const node = frozen.get(qualify(guide.id, id));
    if (!node) throw new RangeError(id);
    const own = node.answers ?? [];
    const names = new Set(own.map(([answer]) => answer));
    const open = node.kind === 'question' || node.kind === 'step';
    const exits =
      open && id !== guide.start ? guide.exits.filter(([answer]) => !names.has(answer)) : [];
    let journeys = 1n;
    const lead = ([answer, target]: ReleaseAnswer): ReleaseAnswer => [
      answer,
      other === undefined ? target : qualify(other, target),
    ];
    const edges = [...own.map(lead), ...exits].map(([answer, target]): Edge => {
      const to = make(target);
      const before = journeys;
      journeys += to.journeys;
      return { answer: answer as AnswerId, to, before };
    });
    const { page = node.id, track, marks: { heat = false, flag, answers } = {} } = node;
    const ready: CodebookNode = {
      id: id as NodeId,
      guide: (other ?? guide.id) as GuideId,
      page,
      ...(track === undefined ? {} : { track }),
      sentences: named(node.text ?? node.id) as TextId,
      kind: node.kind,
      urgency: node.urgency ?? 'none',
      heat,
      ...(flag === undefined ? {} : { flag }),
      answers: own.map(lead).map((answer) => edgeOf(answer, answers)),
      edges,
      byAnswer: new Map(edges.map((edge) => [edge.answer, edge])),
      journeys,
    };
    made.set(id, ready);
    return ready;
  };
  const first = make(guide.start);
  const own = guide.nodes.map(({ id }) => make(id));
  // The guide's own first, in its order, then what it hands over to.
  const nodes = new Map([...own, ...made.values()].map((node) => [node.id, node]));
  // An exit is one of the start's answers, and tells the same.
  const told = frozen.get(qualifyOther(guide.id, guide.start))?.marks?.answers;
  return {
    id: guide.id as GuideId,
    start: first.id,
    first,
    nodes,
    exits: guide.exits.map((exit) => edgeOf(exit, told)),
    flags,
  };
}

function edgeOf([answer, to]: ReleaseAnswer, marks: PageMarks['answers'] = {}): Answer {
  const { flag, heatEnded } = (Object.hasOwn(marks, answer) ? marks[answer] : undefined) ?? {};
  return {
    ...{ id: answer as AnswerId, to: to as NodeId, sets: [], clears: [] },
    ...(flag === undefined ? {} : { flag }),
    ...(heatEnded === undefined ? {} : { heatEnded }),
  };
}
