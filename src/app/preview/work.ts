/** What a visit's diagnosis comes to, for the page and for paper. Pure. */
import type { Accessor } from 'solid-js';
import { loadFor } from '../../diagnosis/parts.ts';
import { plan, jointSteps, stillOpen, type PlanStep } from '../../diagnosis/plan.ts';
import { posterior, type Share } from '../../diagnosis/posterior.ts';
import type { Check, Evidence, Model, SparePart } from '../../diagnosis/types.ts';
import type { ProblemState } from './visit.ts';

/** The faults worth a look, and the least share to be among them. */
export const MOST_SHOWN = 4;
const LEAST_SHOWN = 0.03;

/** One problem of a visit, as far as a sheet of paper tells of it. */
export type Problem = Pick<ProblemState, 'model' | 'evidence' | 'ranking' | 'load' | 'plan'>;

/** The problems of a visit, the most urgent first, and the one order of checks for all of them. */
export interface Work {
  readonly problems: readonly Problem[];
  readonly steps: Accessor<readonly PlanStep[]>;
}

/** The same of answers that no check has added to. */
export function workOf(given: readonly { model: Model; evidence: Evidence }[]): Work {
  const problems = given.map(({ model, evidence }) => ({
    model,
    evidence: () => evidence,
    ranking: () => posterior(model, evidence),
    load: () => loadFor(model, stillOpen(model, evidence)),
    plan: () => plan(model, evidence),
  }));
  return { problems, steps: () => jointSteps(problems) };
}

/** The faults worth a look, the likeliest first. */
export function likely({ ranking }: Pick<Problem, 'ranking'>): readonly Share[] {
  return ranking().filter(({ share }, index) => index < MOST_SHOWN && share >= LEAST_SHOWN);
}

/** A check by its name, with the problem whose figures tell of it. */
export function checkIn<P extends Problem>(
  problems: readonly P[],
  id: string,
): { readonly check: Check; readonly of: P } | undefined {
  for (const of of problems) {
    const check = of.model.checks.find((one) => one.id === id);
    if (check) return { check, of };
  }
  return undefined;
}

/** Tools or skills in the order in which the checks ask for them. */
export function needed({ problems, steps }: Work, kind: 'tools' | 'skills'): string[] {
  return [...new Set(steps().flatMap(({ check }) => checkIn(problems, check)?.check[kind] ?? []))];
}

/** What to load, each part once, as the models have them. */
export function loaded({ problems }: Pick<Work, 'problems'>): readonly SparePart[] {
  const parts = problems.flatMap(({ model, load }) => {
    const ids = load().parts;
    return model.parts.filter(({ id }) => ids.includes(id)).map((part) => [part.id, part] as const);
  });
  return [...new Map(parts).values()];
}

/** Whether a part would be loaded that fits by a model number nobody has told. */
export function asksModel(visit: Work, modelNumber: string | undefined): boolean {
  return !modelNumber && loaded(visit).some(({ fits }) => fits === 'model');
}
