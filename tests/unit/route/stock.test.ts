import { describe, expect, test } from 'vitest';
import { coversAtLeast, routeDemand, routeStock } from '../../../src/route/stock.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import type { Random } from '../../../src/diagnosis/random.ts';
import type { Model } from '../../../src/diagnosis/types.ts';
import { many, modelOf, whole } from '../diagnosis/support/models.ts';

interface Route {
  readonly model: Model;
  readonly visits: readonly (readonly number[])[];
}

function randomRoute(random: Random): Route {
  const parts = whole(1, 3, random);
  const faults = whole(1, 4, random);
  const weights = () => {
    const row = many(faults, () => random() + 0.01);
    const total = row.reduce((a, b) => a + b, 0);
    return row.map((one) => one / total);
  };
  const model = modelOf({
    priors: weights(),
    parts: many(faults, () => many(parts, (part) => part).filter(() => random() < 0.4)),
    costs: many(parts, () => 1),
  });
  return { model, visits: many(whole(1, 5, random), weights) };
}

/** Every combination of faults over the visits: its chance, and how many of each part it takes. */
function outcomes({ model, visits }: Route): { chance: number; needs: number[] }[] {
  return visits.reduce(
    (all, shares) =>
      all.flatMap(({ chance, needs }) =>
        model.faults.map(({ parts }, fault) => ({
          chance: chance * (shares[fault] ?? 0),
          needs: needs.map((count, part) =>
            parts.some((id) => id === model.parts[part]?.id) ? count + 1 : count,
          ),
        })),
      ),
    [{ chance: 1, needs: model.parts.map(() => 0) }],
  );
}

const demandOf = ({ model, visits }: Route) =>
  routeDemand(visits.map((shares) => ({ model, shares })));
const stockOf = (model: Model, visits: Route['visits'], chance: number) =>
  routeStock(demandOf({ model, visits }), chance);

describe('parts for a route of visits', () => {
  test('the demand for each part equals the sum over all outcomes, on 100 random routes', () => {
    for (let seed = 1; seed <= 100; seed++) {
      const route = randomRoute(seeded(seed));
      const all = outcomes(route);
      for (const [part, pmf] of [...demandOf(route).values()].entries())
        for (const [k, chance] of pmf.entries()) {
          const exact = all.filter(({ needs }) => needs[part] === k);
          expect(chance, `seed ${seed}`).toBeCloseTo(
            exact.reduce((a, one) => a + one.chance, 0),
            12,
          );
        }
    }
  });

  test('the stock keeps its promise over all outcomes, and costs at most a piece more than needed', () => {
    let exactly = 0;
    const routes = 150;
    for (let seed = 1; seed <= routes; seed++) {
      const random = seeded(seed);
      const route = randomRoute(random);
      const wanted = 0.8 + 0.19 * random();
      const all = outcomes(route);
      const covered = (counts: readonly number[]) =>
        all
          .filter(({ needs }) => needs.every((count, part) => count <= (counts[part] ?? 0)))
          .reduce((a, { chance }) => a + chance, 0);
      const { stock, chanceAtLeast } = stockOf(route.model, route.visits, wanted);
      const counts = route.model.parts.map(
        ({ id }) => stock.find(({ part }) => part === id)?.count ?? 0,
      );
      const truth = covered(counts);
      expect(chanceAtLeast).toBeGreaterThanOrEqual(wanted - 1e-9);
      expect(truth, `seed ${seed}`).toBeGreaterThanOrEqual(chanceAtLeast - 1e-9);
      const pieces = counts.reduce((a, b) => a + b, 0);
      const least = smallest(route, wanted, covered);
      expect(pieces - least, `seed ${seed}`).toBeLessThanOrEqual(1);
      if (pieces === least) exactly++;
      const bound = coversAtLeast(
        demandOf(route),
        new Map(stock.map(({ part, count }) => [part, count])),
      );
      expect(bound, `seed ${seed}`).toBeCloseTo(chanceAtLeast, 12);
    }
    expect(exactly).toBeGreaterThan(routes * 0.8);
  });

  test('alike visits follow the binomial: 10 visits, 1 in 2 needs the part', () => {
    const model = modelOf({ priors: [1, 1], parts: [[0], []], costs: [1] });
    const visits = many(10, () => [0.5, 0.5]);
    // Binomial tails from any table: P(more than 7) = 56/1024, P(more than 8) = 11/1024.
    expect(stockOf(model, visits, 1 - 56 / 1024).stock).toEqual([{ part: 'p0', count: 7 }]);
    expect(stockOf(model, visits, 0.95).stock).toEqual([{ part: 'p0', count: 8 }]);
    expect(stockOf(model, visits, 1).stock).toEqual([{ part: 'p0', count: 10 }]);
  });

  test('a part of two guides is one part', () => {
    const one = modelOf({ priors: [1], parts: [[0]], costs: [1, 1] });
    const two = modelOf({ priors: [1, 1], parts: [[0], [1]], costs: [1, 1] });
    const demand = routeDemand([
      { model: one, shares: [1] },
      { model: two, shares: [0.5, 0.5] },
    ]);
    // One for certain; a second one, and one of the other kind, as a coin falls.
    expect([...demand.values()]).toEqual([
      [0, 0.5, 0.5],
      [0.5, 0.5],
    ]);
  });

  test('500 visits: no smaller stock keeps the bound, by taking out any one piece', () => {
    const random = seeded(7);
    const { model } = randomRoute(seeded(3));
    const visits = many(500, () => {
      const row = model.faults.map(() => random() ** 3 + 1e-3);
      const total = row.reduce((a, b) => a + b, 0);
      return row.map((weight) => weight / total);
    });
    const demand = demandOf({ model, visits });
    const { stock } = routeStock(demand, 0.95);
    expect(stock.length).toBeGreaterThan(0);
    const counts = new Map<string, number>(stock.map(({ part, count }) => [part, count]));
    expect(coversAtLeast(demand, counts)).toBeGreaterThanOrEqual(0.95 - 1e-9);
    for (const { part, count } of stock)
      expect(coversAtLeast(demand, new Map([...counts, [part, count - 1]]))).toBeLessThan(0.95);
  });

  test('no visits, no stock; a chance above 1 is refused', () => {
    const model = modelOf({ priors: [1], parts: [[0]], costs: [1] });
    expect(stockOf(model, [], 0.99)).toEqual({ stock: [], chanceAtLeast: 1 });
    expect(() => stockOf(model, [[1]], 1.1)).toThrow(RangeError);
  });
});

/** The fewest pieces with which the covered chance is as wanted, over all stocks. */
function smallest(
  { model, visits }: Route,
  wanted: number,
  covered: (counts: readonly number[]) => number,
): number {
  const stocks = model.parts.reduce<number[][]>(
    (all) => all.flatMap((counts) => many(visits.length + 1, (count) => [...counts, count])),
    [[]],
  );
  const enough = stocks.filter((counts) => covered(counts) >= wanted - 1e-12);
  return Math.min(...enough.map((counts) => counts.reduce((a, b) => a + b, 0)));
}
