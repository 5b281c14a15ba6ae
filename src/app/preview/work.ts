/** What a visit's diagnosis comes to, for the page and for paper. Pure. */
import type { Accessor } from 'solid-js';
import { loadFor } from '../../diagnosis/parts.ts';
import { bestPlan, stillOpen, type Plan } from '../../diagnosis/plan.ts';
import { posterior, type Share } from '../../diagnosis/posterior.ts';
import type { Evidence, Model, SparePart } from '../../diagnosis/types.ts';
import type { DiagnosisState } from './visit.ts';

/** The faults worth a look, and the least share to be among them. */
export const MOST_SHOWN = 4;
const LEAST_SHOWN = 0.03;
/** What a sheet of paper says of a visit. */
export interface Work extends Pick<DiagnosisState, 'model' | 'ranking' | 'load'> {
  readonly plan: Accessor<Pick<Plan, 'best'>>;
}

/** The same of answers that no check has added to. */
export const workOf = (model: Model, evidence: Evidence): Work => ({
  model,
  ranking: () => posterior(model, evidence),
  load: () => loadFor(model, stillOpen(model, evidence)),
  plan: () => bestPlan(model, evidence),
});

/** The faults worth a look, the likeliest first. */
export function likely({ ranking }: Pick<Work, 'ranking'>): readonly Share[] {
  return ranking().filter(({ share }, index) => index < MOST_SHOWN && share >= LEAST_SHOWN);
}

/** Tools or skills in the order in which the checks ask for them. */
export function needed(visit: Work, kind: 'tools' | 'skills'): string[] {
  const steps = visit.plan().best.steps;
  const of = (id: string) => visit.model.checks.find((check) => check.id === id)?.[kind] ?? [];
  return [...new Set(steps.flatMap(({ check }) => of(check)))];
}

/** What to load, as the model has it. */
export function loaded({ model, load }: Pick<Work, 'model' | 'load'>): readonly SparePart[] {
  return model.parts.filter(({ id }) => load().parts.includes(id));
}

/** Whether a part would be loaded that fits by a model number nobody has told. */
export function asksModel(visit: Work, modelNumber: string | undefined): boolean {
  return !modelNumber && loaded(visit).some(({ fits }) => fits === 'model');
}
