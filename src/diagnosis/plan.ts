import { COMPLAINT, KIND, checkKey, detailKey } from './evidence.ts';
import { at, sum } from './numbers.ts';
import { MOST_CHECKS, bestOrder, stepsOf } from './order.ts';
import type { Search, SearchStep } from './order.ts';
import { shares } from './posterior.ts';
import type { AccessGroup, AccessId, Check, CheckId, Evidence, FaultId, Model } from './types.ts';

export interface PlanStep {
  readonly check: CheckId;
  /** Minutes with the access it newly opens. */
  readonly minutes: number;
  readonly opens: readonly AccessId[];
  /** Probability that the fault has not been found before this step. */
  readonly reached: number;
}

export interface Route {
  readonly steps: readonly PlanStep[];
  /** Until the fault is found, given that one of the checks still to do finds it. */
  readonly expectedMinutes: number;
}

export interface Plan {
  /** The least expected minutes. */
  readonly best: Route;
  /** Share of the faults that no check still to do would find. */
  readonly leftOver: number;
  /** The faults that the results so far rule in, the latest result first. */
  readonly ruledIn: readonly FaultId[];
}

const kindOf = (evidence: Evidence): string =>
  evidence.find(({ key }) => key === detailKey(KIND))?.answer ?? '';

const accessMinutes = ({ minutes, kinds }: AccessGroup, evidence: Evidence): number =>
  kinds?.[kindOf(evidence)] ?? minutes;

/** The guide whose complaint is a locked door. */
const LOCKED = 'door-locked';
/** What ends a locked door: the caller's own word for it, or a reset that cured it. */
const OPENED = ['opened', 'cured'];

/**
 * What a check needs opened on this range, in order: what serves instead on its kind, and the
 * door where it is locked.
 */
export function openingFor(
  model: Model,
  evidence: Evidence,
): (needs: Pick<Check, 'access'>) => AccessId[] {
  const kind = kindOf(evidence);
  const locked =
    evidence.some(({ key, answer }) => key === COMPLAINT && answer === LOCKED) &&
    !evidence.some(({ answer }) => OPENED.includes(answer));
  const needed = (id: AccessId): AccessId[] => {
    const { instead, when, after = [] } = model.access.find((one) => one.id === id) ?? {};
    if (when === 'locked' && !locked) return [];
    return [...after.flatMap(needed), instead?.[kind] ?? id];
  };
  return ({ access }) => [...new Set(access.flatMap(needed))];
}

/** How a locked door is got open, which the repair needs and some checks before it. */
export interface DoorStep {
  /** With what must be open before. */
  readonly minutes: number;
  /** Checks that wait for it. */
  readonly before: readonly CheckId[];
}

/** Undefined where the door opens by hand. */
export function doorStep(model: Model, evidence: Evidence): DoorStep | undefined {
  const opening = openingFor(model, evidence);
  const door = model.access.find(({ when }) => when === 'locked');
  if (!door) return undefined;
  const opens = opening({ access: [door.id] });
  if (opens.length === 0) return undefined;
  return {
    minutes: sum(
      model.access.map((one) => (opens.includes(one.id) ? accessMinutes(one, evidence) : 0)),
    ),
    before: model.checks.flatMap(({ id, access }) => (access.includes(door.id) ? id : [])),
  };
}

const mask = (indexes: readonly number[]) => indexes.reduce((all, bit) => all | (1 << bit), 0);

/** The results in the evidence, in the order given, as places in the model. */
function resultsOf(model: Model, evidence: Evidence) {
  return evidence.flatMap(({ key, answer }) => {
    const check = model.checks.findIndex(({ id }) => checkKey(id) === key);
    const result = model.checks[check]?.results.find(({ id }) => id === answer);
    return result ? [{ check, result }] : [];
  });
}

/** Sets of faults are kept in the bits of one 32-bit integer. */
const MOST_FAULTS = 31;

/** The places of the largest values, so many of them, in the order of the list. */
function largest(values: readonly number[], most: number): number[] {
  return [...values.keys()]
    .toSorted((a, b) => at(values, b) - at(values, a))
    .slice(0, most)
    .toSorted((a, b) => a - b);
}

/** The places of the faults that a check's results rule in. */
function foundBy(model: Model, check: number): number[] {
  const ids = new Set(at(model.checks, check).results.flatMap(({ pointsTo }) => pointsTo));
  return model.faults.flatMap(({ id }, fault) => (ids.has(id) ? fault : []));
}

/** A check that finds fewer faults than one in so many visits waits until it finds more. */
const LEAST = 0.01;

/**
 * The shares with nothing left of a fault that a check has looked for and not found: what to load
 * is planned as if checks were conclusive, as their order is. They sum to 1 or less.
 */
export function stillOpen(
  model: Model,
  evidence: Evidence,
  now: readonly number[] = shares(model, evidence),
): number[] {
  const results = resultsOf(model, evidence);
  const found = new Set(results.flatMap(({ result }) => result.pointsTo));
  const out = new Set(results.flatMap(({ check }) => foundBy(model, check)));
  return now.map((share, fault) =>
    out.has(fault) && !found.has(at(model.faults, fault).id) ? 0 : share,
  );
}

/**
 * Of the checks not done those that find most, each with those it waits for, as many as the
 * exact search takes; what only the others would find counts as found by none.
 */
function worthwhile(model: Model, now: readonly number[], done: readonly number[]): number[] {
  const open = [...model.checks.keys()].filter((check) => !done.includes(check));
  const found = new Map(
    open.map((check) => [check, sum(foundBy(model, check).map((fault) => at(now, fault)))]),
  );
  const places = new Map(model.checks.map(({ id }, check) => [id, check]));
  const withFirst = (check: number): number[] => [
    ...at(model.checks, check).after.flatMap((id) => {
      const first = places.get(id);
      return first === undefined ? [] : withFirst(first);
    }),
    check,
  ];
  const taken = new Set<number>();
  const worth = open.filter((check) => (found.get(check) ?? 0) >= LEAST);
  for (const check of worth.toSorted((a, b) => (found.get(b) ?? 0) - (found.get(a) ?? 0))) {
    const next = withFirst(check).filter((one) => open.includes(one) && !taken.has(one));
    if (taken.size + next.length > MOST_CHECKS) continue;
    for (const one of next) taken.add(one);
  }
  return [...taken].toSorted((a, b) => a - b);
}

/**
 * The checks of a model that are not done as a search; `todo` holds their places
 * in the model. Probabilities are those given that one of these checks finds the
 * fault. What the checks done have opened is open.
 */
function searchOf(
  model: Model,
  now: readonly number[],
  todo: readonly number[],
  done: readonly number[],
  evidence: Evidence,
  opened: readonly AccessId[],
) {
  const accessBit = new Map(model.access.map(({ id }, bit) => [id, bit]));
  const opening = openingFor(model, evidence);
  const opens = (check: number) =>
    mask(opening(at(model.checks, check)).flatMap((id) => accessBit.get(id) ?? []));
  const findable = new Set(todo.flatMap((check) => foundBy(model, check)));
  const faults = largest(
    now.map((share, fault) => (findable.has(fault) ? share : -1)),
    MOST_FAULTS,
  ).filter((fault) => findable.has(fault));
  const checks = todo.map((index) => {
    const { minutes, after } = at(model.checks, index);
    const finds = foundBy(model, index).map((fault) => faults.indexOf(fault));
    const first = todo.flatMap((other, bit) =>
      after.includes(at(model.checks, other).id) ? bit : [],
    );
    return {
      minutes,
      access: opens(index),
      finds: mask(finds.filter((bit) => bit >= 0)),
      after: mask(first),
    };
  });
  const kept = faults.map((fault) => at(now, fault));
  const mass = sum(kept);
  const search: Search = {
    shares: kept.map((share) => (mass > 0 ? share / mass : 0)),
    checks,
    access: model.access.map((one) => accessMinutes(one, evidence)),
    opened: done.reduce(
      (all, check) => all | opens(check),
      mask(opened.flatMap((id) => accessBit.get(id) ?? [])),
    ),
  };
  return { search, leftOver: Math.max(0, 1 - mass) };
}

/** The checks still to do as a search, and routes of it in the model's names. */
export function prepared(
  model: Model,
  evidence: Evidence,
  now: readonly number[] = shares(model, evidence),
  opened: readonly AccessId[] = [],
) {
  const results = resultsOf(model, evidence);
  const done = results.map(({ check }) => check);
  const todo = worthwhile(model, now, done);
  const { search, leftOver } = searchOf(model, now, todo, done, evidence, opened);
  const step = ({ check, minutes, opens, reached }: SearchStep): PlanStep => ({
    check: at(model.checks, at(todo, check)).id,
    minutes,
    opens: model.access.filter((_, bit) => (opens >>> bit) & 1).map(({ id }) => id),
    reached,
  });
  const route = (order: readonly number[]): Route => {
    const steps = stepsOf(search, order);
    return {
      steps: steps.map(step),
      expectedMinutes: sum(steps.map(({ minutes, reached }) => minutes * reached)),
    };
  };
  const ruledIn = [...new Set(results.toReversed().flatMap(({ result }) => result.pointsTo))];
  return { todo, search, leftOver, ruledIn, route };
}

/**
 * The order of the checks still to do with the least expected minutes. Results of checks are part of
 * the evidence (key `check.` and the check's name): each updates the shares by its likelihoods, its
 * check is done, and what it opened is open; so a plan made anew after each result is the re-plan.
 *
 * For planning a check counts as conclusive for every fault that one of its
 * results rules in; the shares it starts from are those after all the evidence.
 *
 * @param now those shares, where they are known
 * @param opened what is open besides
 */
export function plan(
  model: Model,
  evidence: Evidence,
  now?: readonly number[],
  opened?: readonly AccessId[],
): Plan {
  const { search, leftOver, ruledIn, route } = prepared(model, evidence, now, opened);
  return { best: route(bestOrder(search)), leftOver, ruledIn };
}

/** A problem of a visit as its plan is made; what was found of it, too. */
interface Problem {
  readonly model: Model;
  readonly evidence: () => Evidence;
  readonly plan: () => Plan;
}

/**
 * One order of checks for all problems of one range, the first of them first, and those of which
 * the fault is found last. Each check once; what an earlier one has opened stays open. That one
 * fault makes both problems is not counted on.
 */
export function jointSteps(problems: readonly Problem[]): readonly PlanStep[] {
  const isFound = ({ plan: made }: Problem) => Number(made().ruledIn.length > 0);
  const [first, ...others] = problems.toSorted((a, b) => isFound(a) - isFound(b));
  const steps: PlanStep[] = [...(first?.plan().best.steps ?? [])];
  for (const { model, evidence } of others) {
    const done = problems.flatMap((one) =>
      resultsOf(one.model, one.evidence()).flatMap(({ check }) =>
        openingFor(one.model, one.evidence())(at(one.model.checks, check)),
      ),
    );
    const opened = [...done, ...steps.flatMap(({ opens }) => opens)];
    const { best } = plan(model, evidence(), undefined, opened);
    steps.push(...best.steps.filter(({ check }) => !steps.some((one) => one.check === check)));
  }
  return steps;
}
