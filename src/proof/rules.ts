import type { GuideNode, Rule } from '../guide/types.ts';
import type { Arc } from './graph.ts';
import { journeyWith, reached } from './property.ts';
import type { Evidence, Failure, Property } from './property.ts';
import { search } from './search.ts';

/** Whether this is `page.answer`. Every rule asks it of every arc, so the page is compared first. */
function isAnswer(node: GuideNode | undefined, arc: Arc, answer: string): boolean {
  return (
    node !== undefined &&
    answer.startsWith(node.sentences) &&
    `${node.sentences}.${arc.answer.id}` === answer
  );
}

/** Pages passed at most so often: journeys that come to one once more. */
function tooOften({ graph }: Evidence, page: string, most: number): Failure[] {
  const passes = (node: GuideNode | undefined): number => (node?.sentences === page ? 1 : 0);
  const counted = search(graph, most + 2, (passed, node) =>
    Math.min(most + 1, passed + passes(node)),
  );
  return reached(graph).flatMap(({ node, index }) => {
    const journey = node.sentences === page ? counted.journeyTo(index, most) : undefined;
    return journey
      ? [{ fault: { code: 'page-again' as const, node: node.id, most }, journey: () => journey }]
      : [];
  });
}

/**
 * A page only after an answer, or never after it unless another one was given since: journeys that
 * come there otherwise.
 */
function otherwise(
  { graph }: Evidence,
  { kind, page, answer, ...more }: Extract<Rule, { kind: 'needs' | 'never-after' }>,
): Failure[] {
  const given = kind === 'needs';
  const unless = 'unless' in more ? more.unless : undefined;
  const told = search(graph, 2, (before, node, arc) =>
    isAnswer(node, arc, answer)
      ? 1
      : unless !== undefined && isAnswer(node, arc, unless)
        ? 0
        : before,
  );
  const code = given ? 'page-without' : 'page-despite';
  return reached(graph).flatMap(({ node, index }) => {
    const journey = node.sentences === page ? told.journeyTo(index, given ? 0 : 1) : undefined;
    return journey ? [{ fault: { code, node: node.id, answer }, journey: () => journey }] : [];
  });
}

/**
 * An answer that leads at once to one of some ends: where it leads elsewhere. One that
 * leads nowhere is told of by `journeys-end`.
 */
function elsewhere(evidence: Evidence, answer: string, ends: readonly string[]): Failure[] {
  const { graph } = evidence;
  return reached(graph).flatMap(({ node, index }) =>
    (graph.edges[index] ?? [])
      .filter((arc) => isAnswer(node, arc, answer))
      .filter(({ to }) => graph.nodes[to] && !ends.includes(graph.nodes[to].sentences))
      .map(({ answer: { id } }) => ({
        fault: { code: 'ends-elsewhere' as const, node: node.id, answer: id, ends },
        journey: journeyWith(evidence, index, node.id, id),
      })),
  );
}

function broken(evidence: Evidence, rule: Rule): Failure[] {
  switch (rule.kind) {
    case 'most':
      return tooOften(evidence, rule.page, rule.most);
    case 'needs':
    case 'never-after':
      return otherwise(evidence, rule);
    case 'ends-at':
      return elsewhere(evidence, rule.answer, rule.ends);
  }
}

/**
 * What a guide promises of itself, in `rules` of its file, and what the guides it hands
 * over to promise: each rule is searched for a journey that breaks it, in time linear in the guide.
 */
export const rulesKept: Property = {
  id: 'rules-kept',
  concerns: ({ sentences }, rules) =>
    rules.some((rule) =>
      'page' in rule ? rule.page === sentences : rule.answer.startsWith(`${sentences}.`),
    ),
  check: (evidence) => (evidence.graph.guide.rules ?? []).flatMap((rule) => broken(evidence, rule)),
};
