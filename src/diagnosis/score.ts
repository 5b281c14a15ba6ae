import { buildModel } from './build-model.ts';
import { changed, learn, ofFigures } from './learn.ts';
import type { Change, LearnOptions } from './learn.ts';
import { at, sum } from './numbers.ts';
import { shares } from './posterior.ts';
import { reliability } from './reliability.ts';
import type { Claim, ReliabilityBand } from './reliability.ts';
import type { ModelFile } from './schema.ts';
import type { Model } from './types.ts';
import { UNLISTED } from './visits-schema.ts';
import type { RecordedVisit } from './visits-schema.ts';

/** How well shares foretold what it turned out to be. */
export interface Score {
  /** Mean natural logarithm of the true fault's share: 0 is perfect, lower is worse (Good 1952). */
  readonly log: number;
  /** Mean squared distance of the shares from the truth: 0 is perfect, 2 the worst (Brier 1950). */
  readonly brier: number;
}

interface Told extends Score, Claim {}

/** What a model made of one visit; its fault must be one of the model's. */
function tellOne(model: Model, { answers, fault }: RecordedVisit): Told {
  const evidence = Object.entries(answers).map(([key, answer]) => ({ key, answer }));
  const now = shares(model, evidence);
  const truth = model.faults.findIndex(({ id }) => id === fault);
  const claimed = Math.max(...now);
  return {
    log: Math.log(at(now, truth)),
    brier: sum(now.map((share, index) => (share - (index === truth ? 1 : 0)) ** 2)),
    ...{ claimed, right: now.indexOf(claimed) === truth },
  };
}

const mean = (list: readonly number[]) => sum(list) / list.length;

function meanScore(scores: readonly Score[]): Score {
  return { log: mean(scores.map(({ log }) => log)), brier: mean(scores.map(({ brier }) => brier)) };
}

/** The mean score of a model over visits whose faults it knows; at least one visit. */
export function score(model: Model, visits: readonly RecordedVisit[]): Score {
  return meanScore(visits.map((visit) => tellOne(model, visit)));
}

/** One kind of figures over some visits. */
export interface Foretold {
  readonly score: Score;
  /** By the share that the first guess claimed. */
  readonly reliability: readonly ReliabilityBand[];
}

/** The figures as they are, and those learned from other visits. */
export interface Compared<T> {
  readonly before: T;
  readonly after: T;
}

export interface HeldOut extends Compared<Foretold> {
  /**
   * The visits in four parts, in the order they were kept: where the later ones score worse, the
   * trade or the ranges have changed. No visit has a date. Empty below four visits.
   */
  readonly quarters: readonly ({ readonly visits: number } & Compared<Score>)[];
  /** Mean gain in log score by a visit, and its standard error. */
  readonly gain: number;
  readonly gainError: number;
  /** Visits scored: those whose fault the figures have. */
  readonly visits: number;
}

/** Each visit is foretold by figures learned without it, from four fifths of the rest. */
export const FOLDS = 5;
const QUARTERS = 4;

/**
 * What learning is worth on visits it has not seen: the visits are dealt into five
 * parts, and each part is scored by the old figures and by figures learned from the
 * other four. Undefined below one visit in each part.
 */
function heldOut(
  file: ModelFile,
  known: readonly RecordedVisit[],
  options: LearnOptions,
): HeldOut | undefined {
  if (known.length < FOLDS) return undefined;
  const old = buildModel(file);
  const learned = Array.from({ length: FOLDS }, (_, fold) => {
    const rest = known.filter((_visit, index) => index % FOLDS !== fold);
    return buildModel(changed(file, learn(file, rest, options)));
  });
  const pairs = known.map((visit, index) => ({
    before: tellOne(old, visit),
    after: tellOne(at(learned, index % FOLDS), visit),
  }));
  const record = (of: 'before' | 'after', list: typeof pairs): Foretold => {
    const told = list.map((pair) => pair[of]);
    return { score: meanScore(told), reliability: reliability(told) };
  };
  const gains = pairs.map(({ before, after }) => after.log - before.log);
  const gain = mean(gains);
  const variance = sum(gains.map((one) => (one - gain) ** 2)) / (gains.length - 1);
  const quarters = Array.from({ length: QUARTERS }, (_, quarter) => {
    const bound = (part: number) => Math.round((part * pairs.length) / QUARTERS);
    const own = pairs.slice(bound(quarter), bound(quarter + 1));
    const scored = (of: 'before' | 'after') => meanScore(own.map((pair) => pair[of]));
    return { visits: own.length, before: scored('before'), after: scored('after') };
  });
  return {
    ...{ before: record('before', pairs), after: record('after', pairs), quarters },
    ...{ gain, gainError: Math.sqrt(variance / gains.length), visits: pairs.length },
  };
}

/** What visits say of the figures. */
export interface Study {
  readonly visits: number;
  /** Visits that found a fault which is not listed, or nothing wrong. */
  readonly unlisted: number;
  /** Undefined where the visits are too few to hold any out. */
  readonly heldOut: HeldOut | undefined;
  /** What all the visits together would change. */
  readonly changes: readonly Change[];
  /** Whether the changes foretell clearly better: only then are they worth making. */
  readonly better: boolean;
}

/** What visits would change in the figures, and what that is worth. */
export function study(
  file: ModelFile,
  visits: readonly RecordedVisit[],
  options: LearnOptions,
): Study {
  const known = ofFigures(file, visits);
  const found = heldOut(file, known, options);
  const changes = learn(file, visits, options);
  return {
    visits: visits.length,
    unlisted: visits.filter(({ fault }) => UNLISTED.includes(fault)).length,
    ...{ heldOut: found, changes },
    better: found !== undefined && changes.length > 0 && clearlyBetter(found),
  };
}

/** Gains below so many standard errors may be chance: 2 leave about 1 chance in 40. */
const CLEAR = 2;

/**
 * Whether learned figures foretold held-out visits clearly better. Only then are they
 * worth writing: where the old figures are right, counts move them by chance alone.
 */
export function clearlyBetter({ gain, gainError }: Pick<HeldOut, 'gain' | 'gainError'>): boolean {
  return gain > CLEAR * gainError;
}
