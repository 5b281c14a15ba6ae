/**
 * How a technician sees each guide: which part of the range a question is about, and
 * which answers are safety flags, as the guide's `preview.yaml` says. By the sentences' names,
 * which copies on other tracks share, so that codes of old releases are seen the same way.
 */
import { flags, groups } from './staff-view.ts';
import type { Flag, Group, Sides } from './staff-view.ts';
import { split } from '../guide/ids.ts';
import type { Journey } from '../guide/types.ts';
import type { BookGuide, BookNode } from '../note/library.ts';

/** The guide a node is a page of. */
export function guideOf(guide: BookGuide, node: Pick<BookNode, 'id'>): string {
  return split(node.id).guide ?? guide.id;
}

/** An answer of a journey with its node. */
export interface Line {
  readonly node: BookNode;
  readonly answer: string;
}

/** A journey read along its book; readings of codes always fit theirs. */
export function linesOf(guide: BookGuide, journey: Journey): Line[] {
  return journey.flatMap(({ at, answer }) => {
    const node = guide.nodes.get(at);
    return node ? [{ node, answer }] : [];
  });
}

/** Where a journey ended. */
export function endOf(guide: BookGuide, journey: Journey): BookNode {
  return journey.reduce((node, { answer }) => node.byAnswer.get(answer)?.to ?? node, guide.start);
}

/** The answers to questions by group, empty groups left out. */
export function grouped(sides: Sides, guide: BookGuide, lines: readonly Line[]): [Group, Line[]][] {
  const groupOf = ({ node }: Line): Group =>
    sides[guideOf(guide, node)]?.groups[split(node.text).name] ?? 'happened';
  const questions = lines.filter(({ node }) => node.kind === 'question');
  return groups
    .map((group): [Group, Line[]] => [group, questions.filter((line) => groupOf(line) === group)])
    .filter(([, list]) => list.length > 0);
}

/** The answer that told of a danger, where one did: it leads to an emergency stop. */
export function dangerOf(lines: readonly Line[]): Line | undefined {
  return lines.find(({ node, answer }) => node.byAnswer.get(answer)?.to.urgency === 'emergency');
}

/** A journey's flags, each once. `breakerOff` are the stops that leave the breaker off. */
export function flagsOf(
  sides: Sides,
  guide: BookGuide,
  lines: readonly Line[],
  end: BookNode,
  breakerOff: readonly string[],
): Flag[] {
  const raised = new Set(
    lines.map(
      ({ node, answer }) =>
        sides[guideOf(guide, node)]?.flags[`${split(node.text).name}.${answer}`],
    ),
  );
  if (breakerOff.includes(end.id)) raised.add('breaker-off');
  return flags.filter((flag) => raised.has(flag));
}

/** A journey's answers to one guide, in order. */
export interface Leg {
  readonly guide: string;
  readonly lines: readonly Line[];
}

/** A journey by the guides it came through; guides hand over and never lead back. */
export function legsOf(guide: BookGuide, lines: readonly Line[]): Leg[] {
  const ids = [...new Set(lines.map(({ node }) => guideOf(guide, node)))];
  return ids.map((id) => ({
    guide: id,
    lines: lines.filter(({ node }) => guideOf(guide, node) === id),
  }));
}

/**
 * Questions and steps that the journey did not come past, by their sentences: of the guides it
 * came through only.
 */
export function notAsked(guide: BookGuide, lines: readonly Line[]): BookNode[] {
  const seen = new Set(lines.map(({ node }) => node.text));
  const through = new Set([guide.id, ...legsOf(guide, lines).map((leg) => leg.guide)]);
  return [...guide.nodes.values()].filter((node) => {
    if (node.ways.length === 0 || seen.has(node.text) || !through.has(guideOf(guide, node)))
      return false;
    seen.add(node.text);
    return true;
  });
}
