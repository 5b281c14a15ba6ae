import { at } from '../../../../src/diagnosis/numbers.ts';
import { bestOrder, type Search } from '../../../../src/diagnosis/order.ts';
import { prepared } from '../../../../src/diagnosis/plan.ts';
import type { Evidence, Model } from '../../../../src/diagnosis/types.ts';

const has = (mask: number, bit: number) => ((mask >>> bit) & 1) === 1;

/**
 * The likeliest fault first: at each step the check that finds the most of what
 * is left, or what that check must wait for. The habit a plan is compared with.
 */
export function likeliestFirst(search: Search): number[] {
  const order: number[] = [];
  let set = 0;
  let left = search.checks.reduce((mask, { finds }) => mask | finds, 0);
  const gain = (check: number) =>
    search.shares.reduce(
      (sum, share, bit) => (has(at(search.checks, check).finds & left, bit) ? sum + share : sum),
      0,
    );
  const waiting = (check: number) => at(search.checks, check).after & ~set;
  while (left !== 0) {
    const open = [...search.checks.keys()].filter((check) => !has(set, check));
    const useful = open.filter((check) => (at(search.checks, check).finds & left) !== 0);
    let check = useful.reduce((a, b) => (gain(b) > gain(a) ? b : a));
    while (waiting(check) !== 0) check = 31 - Math.clz32(waiting(check));
    order.push(check);
    set |= 1 << check;
    left &= ~at(search.checks, check).finds;
  }
  return order;
}

/** The best order of a visit's checks beside the habits it is compared with: the trade's, and this. */
export function habits(model: Model, evidence: Evidence) {
  const { todo, search, route } = prepared(model, evidence);
  const fixed = model.fixedOrder.flatMap((id) =>
    todo.flatMap((check, index) => (at(model.checks, check).id === id ? index : [])),
  );
  return {
    best: route(bestOrder(search)),
    fixed: route(fixed),
    likeliest: route(likeliestFirst(search)),
  };
}
