import { checkKey } from './evidence.ts';
import { at, sum } from './numbers.ts';
import { bestOrder, likeliestFirst, stepsOf } from './order.ts';
import type { Search, SearchStep } from './order.ts';
import { shares } from './posterior.ts';
import type { AccessId, CheckId, Evidence, FaultId, Model } from './types.ts';

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
  /** The usual fixed order of the trade, without the checks done already. */
  readonly fixed: Route;
  /** The likeliest fault first. */
  readonly likeliest: Route;
  /** Share of the faults that no check still to do would find. */
  readonly leftOver: number;
  /** The faults that the results so far rule in, the latest result first. */
  readonly ruledIn: readonly FaultId[];
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
) {
  const faultBit = new Map(model.faults.map(({ id }, bit) => [id, bit]));
  const accessBit = new Map(model.access.map(({ id }, bit) => [id, bit]));
  const opens = (check: number) =>
    mask(at(model.checks, check).access.flatMap((id) => accessBit.get(id) ?? []));
  const checks = todo.map((index) => {
    const { minutes, results, after } = at(model.checks, index);
    const finds = results.flatMap(({ pointsTo }) => pointsTo);
    const first = todo.flatMap((other, bit) =>
      after.includes(at(model.checks, other).id) ? bit : [],
    );
    return {
      minutes,
      access: opens(index),
      finds: mask(finds.flatMap((id) => faultBit.get(id) ?? [])),
      after: mask(first),
    };
  });
  const findable = checks.reduce((all, { finds }) => all | finds, 0);
  const kept = now.map((share, bit) => ((findable >>> bit) & 1 ? share : 0));
  const mass = sum(kept);
  const search: Search = {
    shares: kept.map((share) => (mass > 0 ? share / mass : 0)),
    checks,
    access: model.access.map(({ minutes }) => minutes),
    opened: done.reduce((all, check) => all | opens(check), 0),
  };
  return { search, leftOver: Math.max(0, 1 - mass) };
}

/** The checks still to do as a search, and routes of it in the model's names. */
function prepared(model: Model, evidence: Evidence) {
  const results = resultsOf(model, evidence);
  const done = results.map(({ check }) => check);
  const todo = [...model.checks.keys()].filter((check) => !done.includes(check));
  const { search, leftOver } = searchOf(model, shares(model, evidence), todo, done);
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
  return { results, todo, search, leftOver, route };
}

/** The best order alone, for who compares it with no other. */
export function bestPlan(model: Model, evidence: Evidence): Pick<Plan, 'best' | 'leftOver'> {
  const { search, leftOver, route } = prepared(model, evidence);
  return { best: route(bestOrder(search)), leftOver };
}

/**
 * The order of the checks still to do. Results of checks are part of the
 * evidence (key `check.` and the check's name): each updates the shares by its
 * likelihoods, its check is done, and what it opened is open; so a plan made
 * anew after each result is the re-plan.
 *
 * For planning a check counts as conclusive for every fault that one of its
 * results rules in; the shares it starts from are those after all the evidence.
 */
export function plan(model: Model, evidence: Evidence): Plan {
  const { results, todo, search, leftOver, route } = prepared(model, evidence);
  const fixed = model.fixedOrder.flatMap((id) =>
    todo.flatMap((check, index) => (at(model.checks, check).id === id ? index : [])),
  );
  return {
    best: route(bestOrder(search)),
    fixed: route(fixed),
    likeliest: route(likeliestFirst(search)),
    leftOver,
    ruledIn: [...new Set(results.toReversed().flatMap(({ result }) => result.pointsTo))],
  };
}
