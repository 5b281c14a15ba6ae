import { buildModel } from './build-model.ts';
import { changed, learn, ofFigures } from './learn.ts';
import type { LearnOptions } from './learn.ts';
import { at, sum } from './numbers.ts';
import { shares } from './posterior.ts';
import type { ModelFile } from './schema.ts';
import type { Model } from './types.ts';
import type { RecordedVisit } from './visits-schema.ts';

/** How well shares foretold what it turned out to be. */
export interface Score {
  /** Mean natural logarithm of the true fault's share: 0 is perfect, lower is worse (Good 1952). */
  readonly log: number;
  /** Mean squared distance of the shares from the truth: 0 is perfect, 2 the worst (Brier 1950). */
  readonly brier: number;
}

/** The score of one visit; its fault must be one of the model's. */
function scoreOne(model: Model, { answers, fault }: RecordedVisit): Score {
  const evidence = Object.entries(answers).map(([key, answer]) => ({ key, answer }));
  const now = shares(model, evidence);
  const truth = model.faults.findIndex(({ id }) => id === fault);
  return {
    log: Math.log(at(now, truth)),
    brier: sum(now.map((share, index) => (share - (index === truth ? 1 : 0)) ** 2)),
  };
}

const mean = (list: readonly number[]) => sum(list) / list.length;

function meanScore(scores: readonly Score[]): Score {
  return { log: mean(scores.map(({ log }) => log)), brier: mean(scores.map(({ brier }) => brier)) };
}

/** The mean score of a model over visits whose faults it knows; at least one visit. */
export function score(model: Model, visits: readonly RecordedVisit[]): Score {
  return meanScore(visits.map((visit) => scoreOne(model, visit)));
}

export interface HeldOut {
  readonly before: Score;
  readonly after: Score;
  /** Mean gain in log score by a visit, and its standard error. */
  readonly gain: number;
  readonly gainError: number;
  /** Visits scored: those whose fault the figures have. */
  readonly visits: number;
}

/** Each visit is foretold by figures learned without it, from four fifths of the rest. */
export const FOLDS = 5;

/**
 * What learning is worth on visits it has not seen: the visits are dealt into five
 * parts, and each part is scored by the old figures and by figures learned from the
 * other four. Undefined below one visit in each part.
 */
export function heldOut(
  file: ModelFile,
  visits: readonly RecordedVisit[],
  options: LearnOptions,
): HeldOut | undefined {
  const known = ofFigures(file, visits);
  if (known.length < FOLDS) return undefined;
  const old = buildModel(file);
  const pairs = Array.from({ length: FOLDS }, (_, fold) => {
    const rest = known.filter((_visit, index) => index % FOLDS !== fold);
    const next = buildModel(changed(file, learn(file, rest, options)));
    return known
      .filter((_visit, index) => index % FOLDS === fold)
      .map((visit) => ({ before: scoreOne(old, visit), after: scoreOne(next, visit) }));
  }).flat();
  const gains = pairs.map(({ before, after }) => after.log - before.log);
  const gain = mean(gains);
  const variance = sum(gains.map((one) => (one - gain) ** 2)) / (gains.length - 1);
  return {
    before: meanScore(pairs.map(({ before }) => before)),
    after: meanScore(pairs.map(({ after }) => after)),
    gain,
    gainError: Math.sqrt(variance / gains.length),
    visits: pairs.length,
  };
}

/** Gains below so many standard errors may be chance: 2 leave about 1 chance in 40. */
const CLEAR = 2;

/**
 * Whether learned figures foretold held-out visits clearly better. Only then are they
 * worth writing: visits are chosen callers (a door that opened needs no visit), and
 * where the old figures are right, counting such visits would make them worse.
 */
export function clearlyBetter({ gain, gainError }: HeldOut): boolean {
  return gain > CLEAR * gainError;
}
