import { COMPLAINT, VISIT, checkKey } from './evidence.ts';
import { at, inOneGo, normalised, sum } from './numbers.ts';
import { perturbed } from './perturb.ts';
import { informative, shares } from './posterior.ts';
import { seeded } from './random.ts';
import type { Random } from './random.ts';
import type { Evidence, FaultId, Model } from './types.ts';

export interface ShareRange {
  readonly fault: FaultId;
  /** Between these lie nine in ten of the draws: the 5 % and 95 % quantiles. */
  readonly low: number;
  readonly high: number;
}

/** How far to trust that the first is first; the words belong to the page. */
export type Degree = 'firm' | 'fairly' | 'shaky';

export interface Stability {
  /** By `firstStays`; never `firm` where one fact carries the first fault. */
  readonly degree: Degree;
  /** In which part of the draws the fault that is first stays first: of both kinds, the lesser. */
  readonly firstStays: number;
  /** The answers of a group without which another fault would be first. */
  readonly restsOn?: readonly string[];
  /** In the model's order, over the draws of both kinds. */
  readonly ranges: readonly ShareRange[];
  /** Of each kind. */
  readonly draws: number;
}

export interface StabilityOptions {
  readonly draws?: number;
  /** By how much each figure may be wrong, up or down. */
  readonly factor?: number;
  readonly seed?: number;
}

/** First stays first in so many draws: our own choice of where the words change. */
const FIRM = 0.9;
const FAIRLY = 0.6;

function degreeOf(firstStays: number, carried: boolean): Degree {
  if (firstStays >= FIRM && !carried) return 'firm';
  return firstStays >= FAIRLY ? 'fairly' : 'shaky';
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

/** Answers that may all tell of one thing. */
export interface Group {
  readonly keys: readonly string[];
  /** log P(the answers | fault), in the model's order. */
  readonly logs: readonly number[];
}

/** What a table's answers hang on: hidden facts, and other pages by whose answers they are judged. */
function bondsOf(model: Model, key: string): readonly string[] {
  const {
    rules = [],
    supersedes = {},
    told = {},
  } = model.evidence.find((one) => one.key === key) ?? {};
  return [
    ...[key, ...Object.keys(told), ...Object.values(supersedes).flat()],
    ...rules.flatMap(({ if: facts = [], given = [] }) => [
      ...facts.map(([fact]) => `fact ${fact}`),
      ...given.map(([other]) => other).filter((other) => other !== COMPLAINT),
    ]),
  ];
}

/**
 * The informative answers in groups: those that hang on one hidden fact, or of which one decides
 * what the other tells. The model says how they hang together; it may well say it wrong.
 */
export function groupsOf(model: Model, evidence: Evidence): readonly Group[] {
  const parts = informative(model, evidence).map(({ key, likelihood }) => ({
    keys: [key],
    bonds: bondsOf(model, key),
    logs: likelihood.map(Math.log),
  }));
  return parts.reduce<typeof parts>((groups, one) => {
    const joined = groups.filter(({ bonds }) => bonds.some((bond) => one.bonds.includes(bond)));
    const all = [...joined, one];
    return [
      ...groups.filter((group) => !joined.includes(group)),
      {
        keys: all.flatMap(({ keys }) => keys),
        bonds: all.flatMap(({ bonds }) => bonds),
        logs: one.logs.map((_, fault) => sum(all.map(({ logs }) => at(logs, fault)))),
      },
    ];
  }, []);
}

const firstOf = (list: readonly number[]) => list.indexOf(Math.max(...list));

/** Logarithms of the shares, but for one offset, from priors and groups. */
const added = (priors: readonly number[], groups: readonly Group[]) =>
  priors.map((prior, fault) => groups.reduce((total, { logs }) => total + at(logs, fault), prior));

/** What no caller answered counts as given: why the call came, and what was found at the range. */
const asked = ({ keys }: Group) =>
  keys.every((key) => key !== COMPLAINT && key !== VISIT && !key.startsWith(checkKey('')));

/** The answers that carry the first fault alone: leave-one-group-out. */
function carrying(priors: readonly number[], groups: readonly Group[]): Group | undefined {
  const first = firstOf(added(priors, groups));
  return groups.filter(asked).find(
    (left) =>
      firstOf(
        added(
          priors,
          groups.filter((one) => one !== left),
        ),
      ) !== first,
  );
}

/**
 * Shares of a draw that moves groups. All figures of a group of n answers are off the same way,
 * for each fault by one factor to the power n; and every other time, by chance, the group counts
 * as one answer of its mean weight: what it would tell were its answers one and the same.
 */
function movedGroups(
  priors: readonly number[],
  groups: readonly Group[],
  { factor, random }: { readonly factor: number; readonly random: Random },
): number[] {
  const noise = () => Math.log(factor) * (2 * random() - 1);
  const moved = groups.map(({ keys, logs }) => {
    const weight = keys.length > 1 && random() < 0.5 ? 1 / keys.length : 1;
    return { keys, logs: logs.map((log) => weight * (log + keys.length * noise())) };
  });
  return normalised(
    added(
      priors.map((prior) => prior + noise()),
      moved,
    ),
  );
}

/** Quantile of a sorted list, the nearest value. */
function quantile(sorted: readonly number[], q: number): number {
  return at(sorted, Math.round(q * (sorted.length - 1)));
}

/**
 * How stable a ranking is, by draws of two kinds. In one every figure of the model is perturbed
 * on its own by up to `factor`, log-uniform. Such noise averages out over many answers, and
 * cannot see that several tell one fact; in the other, groups of answers move as one. The lesser
 * stability is told. Same seed, same result.
 * In pieces, so that a page can paint between them: yields the draws made so far.
 */
export function* stabilityInPieces(
  model: Model,
  evidence: Evidence,
  { draws = 500, factor = 2, seed = 1 }: StabilityOptions = {},
): Generator<number, Stability> {
  const random = seeded(seed);
  const base = touched(model, evidence);
  const priors = model.faults.map(({ prior }) => Math.log(prior));
  const groups = groupsOf(base, evidence);
  const first = firstOf(shares(base, evidence));
  const all: number[][] = model.faults.map(() => []);
  const kinds = [
    () => shares(perturbed(base, factor, random), evidence),
    () => movedGroups(priors, groups, { factor, random }),
  ];
  const stays = kinds.map(() => 0);
  for (let index = 0; index < draws; index++) {
    yield index;
    for (const [kind, drawn] of kinds.entries()) {
      const moved = drawn();
      if (firstOf(moved) === first) stays[kind] = at(stays, kind) + 1;
      for (const [fault, share] of moved.entries()) at(all, fault).push(share);
    }
  }
  const ranges = model.faults.map(({ id }, fault) => {
    const sorted = at(all, fault).toSorted((a, b) => a - b);
    return { fault: id, low: quantile(sorted, 0.05), high: quantile(sorted, 0.95) };
  });
  const carried = carrying(priors, groups);
  const firstStays = Math.min(...stays) / draws;
  return {
    ...{ degree: degreeOf(firstStays, carried !== undefined), firstStays, ranges, draws },
    ...(carried ? { restsOn: carried.keys } : {}),
  };
}

/** The same in one go. */
export const stability = (
  model: Model,
  evidence: Evidence,
  options?: StabilityOptions,
): Stability => inOneGo(stabilityInPieces(model, evidence, options));
