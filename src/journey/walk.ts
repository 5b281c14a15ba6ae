import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import type { Guide, GuideNode, Journey, NodeId } from '../guide/types.ts';

/** Why a journey does not fit a guide; `index` counts its answers from 0. */
export type WalkProblem =
  /** The answer is not given at the node that the answers before it lead to. */
  | {
      readonly code: 'not-there';
      readonly index: number;
      readonly at: NodeId;
      readonly here: NodeId;
    }
  | { readonly code: 'no-such-answer'; readonly index: number; readonly at: NodeId }
  /** The guide itself leads nowhere; no guide that was loaded does. */
  | { readonly code: 'no-such-node'; readonly index: number; readonly at: NodeId };

export interface Walk {
  /** Every node passed, the start first and the node reached last. */
  readonly nodes: readonly NodeId[];
  /** Where the reader stands now: the next question, or the end. */
  readonly end: GuideNode;
}

/**
 * Follow a journey from the guide's start. An answer is one of its node's own, or
 * one of the guide's exits where the node is a question or a step.
 */
export function walk(guide: Guide, journey: Journey): Result<Walk, WalkProblem> {
  const nodes = [guide.start];
  let here = guide.start;
  let end = guide.nodes.get(here);
  for (const [index, { at, answer }] of journey.entries()) {
    if (!end) return fail({ code: 'no-such-node', index, at: here });
    if (at !== here) return fail({ code: 'not-there', index, at, here });
    const same = (given: { readonly id: string }): boolean => given.id === answer;
    // Stops and finishes have no answers, and so no exits either.
    const taken = end.answers.find(same) ?? (end.answers[0] && guide.exits.find(same));
    if (!taken) return fail({ code: 'no-such-answer', index, at });
    here = taken.to;
    nodes.push(here);
    end = guide.nodes.get(here);
  }
  return end ? ok({ nodes, end }) : fail({ code: 'no-such-node', index: journey.length, at: here });
}

/** How many answers are left until a stop or a finish; exits are not counted. */
export interface Remaining {
  readonly least: number;
  readonly most: number;
}

/**
 * For every node the answers left by the shortest and by the longest way to an end.
 * Linear in the guide; the guide must be one that was loaded, so without loops.
 */
export function remaining(guide: Guide): ReadonlyMap<NodeId, Remaining> {
  const left = new Map<NodeId, Remaining>();
  // Not recursive: a guide of 100,000 nodes in a row would overflow the stack.
  const todo = [...guide.nodes.keys()];
  for (let id = todo.at(-1); id !== undefined; id = todo.at(-1)) {
    const targets = guide.nodes.get(id)?.answers.map(({ to }) => to) ?? [];
    const unknown = left.has(id) ? [] : targets.filter((to) => !left.has(to));
    if (unknown.length > 0) {
      todo.push(...unknown);
      continue;
    }
    todo.pop();
    const after = targets.flatMap((to) => left.get(to) ?? []);
    left.set(id, {
      least: after.length > 0 ? 1 + Math.min(...after.map(({ least }) => least)) : 0,
      most: after.length > 0 ? 1 + Math.max(...after.map(({ most }) => most)) : 0,
    });
  }
  return left;
}
