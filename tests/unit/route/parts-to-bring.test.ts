import { describe, expect, test } from 'vitest';
import { models } from '../../../src/content/load.ts';
import { draw } from '../diagnosis/support/simulate.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import type { Random } from '../../../src/diagnosis/random.ts';
import type { Model } from '../../../src/diagnosis/types.ts';
import { partsToBring } from '../../../src/route/parts-to-bring.ts';
import type { RouteVisit } from '../../../src/route/parts-to-bring.ts';
import { COSTS, many, modelOf, whole } from '../diagnosis/support/models.ts';
import { alongOf, walked, type Along } from './support/day.ts';

/** Weights as shares. */
function scaled(weights: readonly number[]): number[] {
  const total = weights.reduce((a, b) => a + b, 0);
  return weights.map((one) => one / total);
}

/** Up to four visits to ranges of one model, whose parts are of both kinds. */
function randomRoute(random: Random): RouteVisit[] {
  const parts = whole(1, 4, random);
  const faults = whole(1, 5, random);
  const model = modelOf({
    priors: many(faults, () => 1),
    // Most repairs need one part, as the published ones do; one in seven needs two.
    parts: many(faults, () => {
      const needed = [0, 1, 1, 1, 1, 1, 2][whole(0, 6, random)] ?? 0;
      return [...new Set(many(needed, () => whole(0, parts - 1, random)))];
    }),
    costs: many(parts, () => whole(2, 40, random)),
    any: many(parts, (part) => part).filter(() => random() < 0.6),
  });
  return many(whole(1, 4, random), () => ({
    model,
    shares: scaled(many(faults, () => random() ** 2 + 0.01)),
  }));
}

/** The expected number of visits finished at once, over every combination of faults. */
function expected(visits: readonly RouteVisit[], along: Along): number {
  const days = visits.reduce(
    (all, { shares }) =>
      all.flatMap(({ chance, faults }) =>
        shares.map((share, fault) => ({ chance: chance * share, faults: [...faults, fault] })),
      ),
    [{ chance: 1, faults: [] as number[] }],
  );
  return days.reduce((all, { chance, faults }) => all + chance * walked(visits, along, faults), 0);
}

function costOf(visits: readonly RouteVisit[], along: Along): number {
  const price = (id: string) =>
    visits[0]?.model.parts.find((part) => String(part.id) === id)?.price ?? NaN;
  const carried =
    along.own.reduce((all, set) => all + [...set].reduce((a, id) => a + price(id), 0), 0) +
    [...along.stock].reduce((all, [id, count]) => all + count * price(id), 0);
  return carried + COSTS.secondVisit * (visits.length - expected(visits, along));
}

/** Every way to load a route of which all visits are alike in their parts. */
function everyAlong(visits: readonly RouteVisit[], model: Model): Along[] {
  const by = (fits: string) => model.parts.filter((part) => part.fits === fits);
  const sets = by('model').reduce<string[][]>(
    (all, { id }) => all.flatMap((set) => [set, [...set, id]]),
    [[]],
  );
  const own = visits.reduce<ReadonlySet<string>[][]>(
    (all) => all.flatMap((before) => sets.map((set) => [...before, new Set(set)])),
    [[]],
  );
  const stocks = by('any').reduce<(readonly [string, number])[][]>(
    (all, { id }) =>
      all.flatMap((before) =>
        many(visits.length + 1, (count) => [...before, [String(id), count] as const]),
      ),
    [[]],
  );
  return own.flatMap((one) => stocks.map((stock) => ({ own: one, stock: new Map(stock) })));
}

describe('parts for a route of visits', () => {
  test('the stated chance is that of all combinations of faults, on 150 random routes', () => {
    let pieces = 0;
    for (let seed = 1; seed <= 150; seed++) {
      const visits = randomRoute(seeded(seed));
      const load = partsToBring(visits);
      expect(load.chance, `seed ${seed}`).toBeCloseTo(
        expected(visits, alongOf(visits, load)) / visits.length,
        12,
      );
      pieces += load.stock.length;
    }
    expect(pieces).toBeGreaterThan(50);
  });

  test('costs on the average less than 1 % more than the best of all ways to load', () => {
    let [ours, best, exactly, routes] = [0, 0, 0, 0];
    for (let seed = 1; seed <= 60; seed++) {
      const visits = randomRoute(seeded(seed)).slice(0, 2);
      const [first] = visits;
      if (!first) continue;
      const cost = costOf(visits, alongOf(visits, partsToBring(visits)));
      const least = Math.min(
        ...everyAlong(visits, first.model).map((along) => costOf(visits, along)),
      );
      expect(cost, `seed ${seed}`).toBeGreaterThan(least - 1e-9);
      [ours, best, routes] = [ours + cost, best + least, routes + 1];
      if (cost < least + 1e-9) exactly++;
    }
    expect(ours / best).toBeLessThan(1.01);
    expect(exactly / routes).toBeGreaterThan(0.9);
  });

  test('alike visits follow the binomial: 10 visits, 1 in 2 needs the part', () => {
    const model = modelOf({ priors: [1, 1], parts: [[0], []], costs: [1], any: [0] });
    const visits = many(10, () => ({ model, shares: [0.5, 0.5] }));
    const count = (carrying: number) => {
      const dear = { ...model, costs: { ...COSTS, carrying } };
      return partsToBring(visits.map((visit) => ({ ...visit, model: dear }))).stock[0]?.count;
    };
    // Binomial tails from any table: P(8 or more) = 56/1024, P(9 or more) = 11/1024.
    expect([count(5.5), count(5.4), count(1.0)]).toEqual([7, 8, 9]);
  });

  test('a part by model is along for its own visit, one that fits any for all together', () => {
    const one = modelOf({ priors: [1], parts: [[0]], costs: [1, 1], any: [1] });
    const two = modelOf({ priors: [1, 1], parts: [[0], [1]], costs: [1, 1], any: [1] });
    const visits = [
      { model: one, shares: [1] },
      { model: two, shares: [0.5, 0.5] },
      { model: two, shares: [0, 1] },
    ];
    const { own, stock } = partsToBring(visits);
    expect(visits.map((visit) => own.get(visit))).toEqual([['p0'], ['p0'], []]);
    expect(stock).toEqual([{ part: 'p1', mean: 1.5, count: 2 }]);
  });

  test('a part of no single visit’s load is along where many visits may need it', () => {
    const model = modelOf({ priors: [1, 1], parts: [[0], []], costs: [10], any: [0] });
    const visits = many(8, () => ({ model, shares: [0.05, 0.95] }));
    expect(partsToBring(visits.slice(0, 1)).stock).toEqual([]);
    expect(partsToBring(visits).stock[0]?.count).toBe(1);
  });

  test('no visits, no parts, nothing left undone', () => {
    expect(partsToBring([])).toEqual({ stock: [], own: new Map(), chance: 1 });
  });

  test('8 visits with parts of both kinds: a simulated year is covered as stated (seed 9)', () => {
    const random = seeded(9);
    const all = Object.values(models());
    const visits = many(8, (index): RouteVisit => {
      const model = all[index % all.length];
      if (!model) throw new Error('no model');
      return { model, shares: scaled(model.faults.map(({ prior }) => prior * random() ** 4)) };
    });
    const load = partsToBring(visits);
    expect(load.stock.length).toBeGreaterThan(1);
    expect([...load.own.values()].filter((parts) => parts.length > 0).length).toBeGreaterThan(2);
    const along = alongOf(visits, load);
    const days = many(4000, () => {
      const faults = visits.map(({ shares }) => draw(shares, random));
      return walked(visits, along, faults) / visits.length;
    });
    const mean = days.reduce((a, b) => a + b, 0) / days.length;
    const variance = days.reduce((a, b) => a + (b - mean) ** 2, 0) / (days.length - 1);
    // Four standard errors: 1 sound program in 15,000 would fail.
    expect(Math.abs(mean - load.chance)).toBeLessThan(4 * Math.sqrt(variance / days.length));
  });
});
