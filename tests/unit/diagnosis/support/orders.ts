import type { Search } from '../../../../src/diagnosis/order.ts';
import type { Random } from '../../../../src/diagnosis/random.ts';
import { many, whole } from './models.ts';

const bits = (mask: number) => many(31, (bit) => bit).filter((bit) => (mask >>> bit) & 1);

/**
 * The least expected minutes over all orders, each one walked. Not step by step as
 * the plan counts, but fault by fault: its share times the minutes until it is found.
 */
export function leastMinutes(search: Search): { minutes: number; orders: number } {
  const { shares, checks, access } = search;
  const target = checks.reduce((all, { finds }) => all | finds, 0);
  const finds = checks.map((check) => bits(check.finds));
  const needs = checks.map((check) => bits(check.access));
  let least = Infinity;
  let orders = 0;
  const walk = (done: number, open: number, found: number, clock: number, spent: number): void => {
    if (found === target) {
      orders++;
      least = Math.min(least, spent);
      return;
    }
    for (const [index, check] of checks.entries()) {
      if ((done >>> index) & 1 || (check.after & ~done) !== 0) continue;
      let now = clock + check.minutes;
      for (const group of needs[index] ?? [])
        if (!((open >>> group) & 1)) now += access[group] ?? 0;
      let more = 0;
      for (const fault of finds[index] ?? [])
        if (!((found >>> fault) & 1)) more += (shares[fault] ?? 0) * now;
      walk(done | (1 << index), open | check.access, found | check.finds, now, spent + more);
    }
  };
  walk(0, search.opened, 0, 0, 0);
  return { minutes: least, orders };
}

export interface Shape {
  readonly checks: number;
  readonly faults: number;
  readonly groups: number;
  /** Whether one fault may be found by several checks, and checks may wait for others. */
  readonly tangled: boolean;
}

/** A random search: up to half of the checks share their access with others. */
export function randomSearch(shape: Shape, random: Random): Search {
  const weights = many(shape.faults, () => random() ** 2 + 0.001);
  const total = weights.reduce((a, b) => a + b, 0);
  const mask = (count: number, chance: number) =>
    many(count, (bit) => (random() < chance ? 1 << bit : 0)).reduce((a, b) => a | b, 0);
  return {
    shares: weights.map((one) => one / total),
    access: many(shape.groups, () => whole(1, 20, random)),
    opened: random() < 0.3 ? mask(shape.groups, 0.3) : 0,
    checks: many(shape.checks, (index) => ({
      minutes: whole(1, 20, random),
      access: mask(shape.groups, 0.4),
      finds: shape.tangled
        ? mask(shape.faults, 1.5 / shape.faults)
        : index < shape.faults
          ? 1 << index
          : 0,
      // Waits only for earlier ones, so never in a circle.
      after: shape.tangled && random() < 0.2 ? mask(index, 0.3) : 0,
    })),
  };
}
