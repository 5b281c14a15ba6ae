import { checkKey } from './evidence.ts';
import { at } from './numbers.ts';
import { perturbed } from './perturb.ts';
import { shares } from './posterior.ts';
import { seeded } from './random.ts';
import type { Evidence, FaultId, Model } from './types.ts';

export interface ShareRange {
  readonly fault: FaultId;
  /** Between these lie nine in ten of the draws: the 5 % and 95 % quantiles. */
  readonly low: number;
  readonly high: number;
}

export interface Stability {
  /** In which part of the draws the fault that is first stays first. */
  readonly firstStays: number;
  /** In the model's order. */
  readonly ranges: readonly ShareRange[];
  readonly draws: number;
}

export interface StabilityOptions {
  readonly draws?: number;
  /** By how much each figure may be wrong, up or down. */
  readonly factor?: number;
  readonly seed?: number;
}

/** Only what the evidence touches: the rest cannot move the shares. */
function touched(model: Model, evidence: Evidence): Model {
  const keys = new Set(evidence.map(({ key }) => key));
  return {
    ...model,
    evidence: model.evidence.filter(({ key }) => keys.has(key)),
    checks: model.checks.filter(({ id }) => keys.has(checkKey(id))),
  };
}

/** Quantile of a sorted list, the nearest value. */
function quantile(sorted: readonly number[], q: number): number {
  return at(sorted, Math.round(q * (sorted.length - 1)));
}

/** Draws between two pauses: a few milliseconds of work on a phone. */
const BETWEEN_PAUSES = 20;

/**
 * How stable a ranking is: every figure of the model is perturbed on its own by up
 * to `factor`, log-uniform, and the shares are computed anew. Same seed, same result.
 * In pieces, so that a page can paint between them: yields the draws made so far.
 */
export function* stabilityInPieces(
  model: Model,
  evidence: Evidence,
  { draws = 500, factor = 2, seed = 1 }: StabilityOptions = {},
): Generator<number, Stability> {
  const random = seeded(seed);
  const base = touched(model, evidence);
  const ours = shares(base, evidence);
  const first = ours.indexOf(Math.max(...ours));
  const all: number[][] = model.faults.map(() => []);
  let stays = 0;
  for (let index = 0; index < draws; index++) {
    if (index > 0 && index % BETWEEN_PAUSES === 0) yield index;
    const moved = shares(perturbed(base, factor, random), evidence);
    if (moved.indexOf(Math.max(...moved)) === first) stays++;
    for (const [fault, share] of moved.entries()) at(all, fault).push(share);
  }
  const ranges = model.faults.map(({ id }, fault) => {
    const sorted = at(all, fault).toSorted((a, b) => a - b);
    return { fault: id, low: quantile(sorted, 0.05), high: quantile(sorted, 0.95) };
  });
  return { firstStays: stays / draws, ranges, draws };
}

/** The same in one go. */
export function stability(model: Model, evidence: Evidence, options?: StabilityOptions): Stability {
  const pieces = stabilityInPieces(model, evidence, options);
  for (;;) {
    const { done, value } = pieces.next();
    if (done) return value;
  }
}
