/**
 * How a technician sees each guide: which part of the oven a question is about, and
 * which answers are safety flags. By the sentences' names, which copies on other
 * tracks share, so that codes of old releases are seen the same way.
 */
import type { Journey } from '../../guide/types.ts';
import type { BookGuide, BookNode } from '../../note/library.ts';

/** In the order shown; what was answered elsewhere counts under the first. */
export const groups = ['happened', 'display', 'heat', 'door', 'inside', 'power', 'last'] as const;
export type Group = (typeof groups)[number];

/** In the order shown: danger to people first, then to the technician, then to the oven. */
export const flags = [
  'panel-bad',
  'tripped',
  'breaker-off',
  'wont-stop',
  'clean-trouble',
  'heat-started',
  'still-hot',
  'error-seen',
  'foil',
  'something-inside',
  'maybe-inside',
  'door-forced',
  'maybe-forced',
  'hum',
] as const;
export type Flag = (typeof flags)[number];

interface Side {
  readonly groups: Readonly<Record<string, Group>>;
  /** Node's sentences, a dot, answer → flag. */
  readonly flags: Readonly<Record<string, Flag>>;
}

const sides: Readonly<Record<string, Side>> = {
  'door-locked': {
    groups: {
      danger: 'happened',
      doing: 'happened',
      display: 'display',
      since: 'heat',
      fan: 'heat',
      near: 'heat',
      inside: 'inside',
      forced: 'door',
      controls: 'door',
      opened: 'door',
      power: 'power',
      panel: 'power',
      'last-gate': 'last',
    },
    flags: {
      'still-cleaning.error': 'error-seen',
      'still-cleaning.wont-stop': 'wont-stop',
      'display.error': 'error-seen',
      'set-clock.error': 'error-seen',
      'wait.still-hot': 'still-hot',
      'cool-again.still-hot': 'still-hot',
      'inside.foil': 'foil',
      'inside.food': 'something-inside',
      'inside.racks': 'something-inside',
      'inside.unsure': 'maybe-inside',
      'opened.foil': 'foil',
      'forced.yes': 'door-forced',
      'forced.unsure': 'maybe-forced',
      'selector-set.started': 'heat-started',
      'panel.bad': 'panel-bad',
      'breaker-off.bad': 'panel-bad',
      'breaker-on.bad': 'panel-bad',
      'breaker-on.tripped': 'tripped',
      'listen.hum-on': 'hum',
      'short-clean.trouble': 'clean-trouble',
      'short-clean.unsure': 'clean-trouble',
    },
  },
};

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
export function grouped(guide: BookGuide, lines: readonly Line[]): [Group, Line[]][] {
  const groupOf = ({ node }: Line): Group => sides[guide.id]?.groups[node.text] ?? 'happened';
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
  guide: BookGuide,
  lines: readonly Line[],
  end: BookNode,
  breakerOff: readonly string[],
): Flag[] {
  const raised = new Set(
    lines.map(({ node, answer }) => sides[guide.id]?.flags[`${node.text}.${answer}`]),
  );
  if (breakerOff.includes(end.id)) raised.add('breaker-off');
  return flags.filter((flag) => raised.has(flag));
}

/** Questions and steps of the guide that the journey did not come past, by their sentences. */
export function notAsked(guide: BookGuide, lines: readonly Line[]): BookNode[] {
  const seen = new Set(lines.map(({ node }) => node.text));
  return [...guide.nodes.values()].filter((node) => {
    if (node.ways.length === 0 || seen.has(node.text)) return false;
    seen.add(node.text);
    return true;
  });
}
