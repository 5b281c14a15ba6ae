import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { qualifyOther, guidesOf, parseId, qualify } from './ids.ts';
import { depthFirst } from './loops.ts';
import type { GuideProblem, GuideTrouble, SourcePosition } from './problem.ts';
import type { Answer, Guide, GuideId, GuideNode, NodeId, Rule, TextId } from './types.ts';

/** An answer that leads into another guide, as its author wrote it. */
export interface HandOver {
  readonly node: string;
  readonly answer: string;
  readonly guide: string;
  /** The other guide's node, by its author's name. */
  readonly target: string;
  /** The other guide's track to go on with; its first one if absent. */
  readonly track: string | undefined;
  readonly place: SourcePosition;
}

/** One guide's file read by itself: its answers may lead to nodes of other guides. */
export interface GuideSource {
  readonly file: string;
  readonly guide: Guide;
  /** Nodes, by their author's names, that other guides may lead to. */
  readonly entries: readonly string[];
  readonly handOvers: readonly HandOver[];
}

/** What an answer leads to before it is known which tracks the other guide has. */
export function unresolved({ guide, target, track }: Omit<HandOver, 'place'>): string {
  return qualifyOther(guide, track === undefined ? target : `${target}/${track}`);
}

type GuideSources = ReadonlyMap<string, GuideSource>;

/** The copy of another guide's node that a hand-over leads to, by its id there. */
function copyOf(handOver: HandOver, { guide }: GuideSource): NodeId {
  const { tracks } = guide;
  const { target, track = tracks[0] } = handOver;
  const kind = guide.nodes.get(target as NodeId)?.kind;
  // An end is one copy on no track.
  const alone = kind === 'stop' || kind === 'finish' || track === tracks[0];
  return (alone ? target : `${target}-${String(track)}`) as NodeId;
}

/** What is wrong with one hand-over by itself. */
function troubleOf(
  handOver: HandOver,
  from: GuideSource,
  parts: GuideSources,
): GuideTrouble | undefined {
  const { node, answer, guide, target, track } = handOver;
  const other = parts.get(guide);
  if (!other) return { code: 'guide-unknown', node, answer, guide };
  if (!other.entries.includes(target))
    return { code: 'entry-unknown', node, answer, guide, target, entries: other.entries };
  if (track !== undefined && !other.guide.tracks.includes(track))
    return { code: 'track-unknown', path: `nodes.${node}.answers.${answer}.track`, track };
  if (!other.guide.nodes.has(copyOf(handOver, other)))
    return { code: 'entry-off-track', node, answer, guide, target, track: track ?? '' };
  const dangers = ({ exits }: Guide): string => exits.map(({ id, to }) => `${id} ${to}`).join();
  return dangers(from.guide) === dangers(other.guide)
    ? undefined
    : { code: 'dangers-differ', node, answer, guide };
}

/** Guides that hand over in a circle, told at the hand-over that closes it. */
function circles(parts: GuideSources): GuideProblem[] {
  const next = (id: string): string[] => [
    ...new Set(
      parts
        .get(id)
        ?.handOvers.map(({ guide }) => guide)
        .filter((guide) => parts.has(guide)),
    ),
  ];
  return depthFirst(parts.keys(), next).loops.flatMap((guides) => {
    const last = parts.get(guides.at(-1) ?? '');
    const closing = last?.handOvers.find(({ guide }) => guide === guides[0]);
    return last && closing
      ? [{ code: 'guide-circle' as const, guides, file: last.file, place: closing.place }]
      : [];
  });
}

/** A part's nodes with every hand-over led to the very copy it means. */
function resolved(part: GuideSource, parts: GuideSources): ReadonlyMap<NodeId, GuideNode> {
  const targets = new Map<string, string>();
  for (const handOver of part.handOvers) {
    const other = parts.get(handOver.guide);
    if (!other) continue;
    targets.set(unresolved(handOver), qualifyOther(handOver.guide, copyOf(handOver, other)));
  }
  const lead = (answer: Answer): Answer => ({
    ...answer,
    to: (targets.get(answer.to) ?? answer.to) as NodeId,
  });
  return new Map(
    [...part.guide.nodes].map(([id, node]) => [id, { ...node, answers: node.answers.map(lead) }]),
  );
}

/** A node as it stands in the guide that has led to it from outside. */
function seenFromOutside(guide: string, node: GuideNode): GuideNode {
  return {
    ...node,
    id: qualifyOther(guide, node.id) as NodeId,
    sentences: qualifyOther(guide, node.sentences) as TextId,
    answers: node.answers.map((answer) => ({
      ...answer,
      to: qualify(guide, answer.to) as NodeId,
    })),
  };
}

function ruleFromOutside(guide: string, rule: Rule): Rule {
  const named = (name: string): string => qualifyOther(guide, name);
  if (rule.kind === 'ends-at')
    return { ...rule, answer: named(rule.answer), ends: rule.ends.map(named) };
  if (rule.kind === 'most') return { ...rule, page: named(rule.page) };
  const unless = 'unless' in rule ? { unless: named(rule.unless) } : {};
  return { ...rule, page: named(rule.page), answer: named(rule.answer), ...unless };
}

/**
 * Join guides that hand over to each other: each guide gets the nodes of others that its
 * journeys can reach, called `other/node`, so that it can be walked, counted and proved as
 * one graph. The way out to a danger's stop stays the first guide's own. Guides keep their order.
 */
export function joinGuides(list: readonly GuideSource[]): Result<readonly Guide[], GuideProblem[]> {
  const parts: GuideSources = new Map(list.map((part) => [part.guide.id, part]));
  const problems = list.flatMap((part) =>
    part.handOvers.flatMap((handOver): GuideProblem[] => {
      const trouble = troubleOf(handOver, part, parts);
      return trouble ? [{ ...trouble, file: part.file, place: handOver.place }] : [];
    }),
  );
  problems.push(...circles(parts));
  if (problems.length > 0) return fail(problems);

  const nodesOf = new Map(list.map((part) => [part.guide.id, resolved(part, parts)]));
  const joined = ({ guide }: GuideSource): Guide => {
    const nodes = new Map(nodesOf.get(guide.id));
    // A Map's iterator also visits what is added while it runs.
    for (const node of nodes.values())
      for (const { to } of node.answers) {
        if (nodes.has(to)) continue;
        const { guide: other = '', name } = parseId(to);
        const target = nodesOf.get(other as GuideId)?.get(name as NodeId);
        if (target) nodes.set(to, seenFromOutside(other, target));
      }
    const rules = guidesOf({ nodes }).flatMap((id) =>
      (parts.get(id)?.guide.rules ?? []).map((rule) => ruleFromOutside(id, rule)),
    );
    return { ...guide, nodes, rules: [...(guide.rules ?? []), ...rules] };
  };
  return ok(list.map(joined));
}
