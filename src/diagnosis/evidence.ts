import { qualify } from '../guide/ids.ts';
import type { GraphNode, Journey, NodeId } from '../guide/types.ts';
import type { Evidence, Model, Rule } from './types.ts';

/** A node's answers count under the text id of the node. */
interface NodesOfGuide {
  readonly nodes: ReadonlyMap<NodeId, Pick<GraphNode, 'sentences'>>;
}

/** The key under which the guide that a journey came to counts as evidence. */
export const COMPLAINT = 'complaint';
/** The key under which it counts as evidence that a visit is still needed. */
export const VISIT = 'visit';

/** The optional detail on which the minutes of an access hang. */
export const KIND = 'kind';

/** The key under which an optional detail counts as evidence. */
export function detailKey(detail: string): string {
  return `detail.${detail}`;
}

/** The key under which a check's result counts as evidence, its answer the result's id. */
export function checkKey(check: string): string {
  return `check.${check}`;
}

/**
 * A journey and its optional details as evidence, in the order given, details last.
 * When two steps share their sentences (a second try of the door), the later
 * answer stands. Answers that no table lists are kept: they carry no information.
 */
export function evidenceOf(
  guide: NodesOfGuide,
  journey: Journey,
  details: Readonly<Record<string, string>> = {},
): Evidence {
  const answers = new Map<string, string>();
  for (const { at, answer } of journey) {
    const key = guide.nodes.get(at)?.sentences;
    if (key === undefined) continue;
    answers.delete(key);
    answers.set(key, answer);
  }
  for (const [detail, answer] of Object.entries(details)) answers.set(detailKey(detail), answer);
  return [...answers].map(([key, answer]) => ({ key, answer }));
}

/** The answers that rows are `given`, as `key.answer`: whether a cure was tried is among them. */
export function conditionsIn(rules: readonly Rule[]): ReadonlySet<string> {
  return new Set(
    rules.flatMap(({ given = [] }) =>
      given.flatMap(([key, answers]) => answers.map((answer) => `${key}.${answer}`)),
    ),
  );
}

/** Where a journey began and where it stands. */
export interface Course {
  readonly first: string;
  readonly last: string;
  /** It ended in a visit: what cures itself is over by then. */
  readonly visit?: boolean;
}

/** The complaint of a journey, as the model knows it; undefined where it knows neither guide. */
export function complaintOf(model: Model, { first, last }: Course): string | undefined {
  const known = model.evidence.find(({ key }) => key === COMPLAINT)?.answers ?? [];
  // A hand-over corrects what the caller thought the trouble was.
  return [last, first].find((guide) => known.includes(guide));
}

/**
 * An answer's key as tables name it: a page by its guide and name where a table is of that
 * guide's page only, else by its name alone.
 *
 * @param first the guide whose own pages `key` names without a guide
 */
export function keyIn(tables: ReadonlySet<string>, first: string, key: string): string {
  const full = key.includes('.') ? key : qualify(first, key);
  return tables.has(full) ? full : full.slice(full.indexOf('/') + 1);
}

/**
 * A journey's evidence as the model's tables name it, the complaint first. A page that guides
 * share says the same in each: asked again in another guide, the later answer stands.
 *
 * @param evidence named as the guide the journey began in does
 */
export function observed(model: Model, course: Course, evidence: Evidence): Evidence {
  const tables = new Set(model.evidence.map(({ key }) => key));
  const complaint = complaintOf(model, course);
  const answers = new Map<string, string>();
  if (complaint !== undefined) answers.set(COMPLAINT, complaint);
  for (const { key, answer } of evidence) {
    const name = keyIn(tables, course.first, key);
    answers.delete(name);
    answers.set(name, answer);
  }
  if (course.visit) answers.set(VISIT, 'needed');
  return [...answers].map(([key, answer]) => ({ key, answer }));
}
