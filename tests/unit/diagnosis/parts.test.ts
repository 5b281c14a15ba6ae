import { describe, expect, test } from 'vitest';
import { bestLoad, loadFor } from '../../../src/diagnosis/parts.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import type { Random } from '../../../src/diagnosis/random.ts';
import { many, modelOf, whole } from './support/models.ts';
import { realModel, told } from './support/real.ts';

function randomModel(random: Random) {
  const parts = whole(1, 6, random);
  const faults = whole(1, 8, random);
  return modelOf({
    priors: many(faults, () => whole(1, 20, random)),
    parts: many(faults, () => many(parts, (part) => part).filter(() => random() < 0.35)),
    costs: many(parts, () => whole(1, 9, random)),
  });
}

/** Every set of parts, by adding or not adding each in turn. */
function everyLoad(model: ReturnType<typeof randomModel>) {
  const sets = model.parts.reduce<(typeof model.parts)[]>(
    (all, part) => all.flatMap((set) => [set, [...set, part]]),
    [[]],
  );
  return sets.map((set) => {
    const have = new Set(set.map(({ id }) => id));
    const cured = model.faults.filter(({ parts }) => parts.every((part) => have.has(part)));
    return {
      size: set.length,
      cost: set.reduce((all, { cost }) => all + cost, 0),
      chance: cured.reduce((all, { prior }) => all + prior, 0),
    };
  });
}

const priors = (model: ReturnType<typeof randomModel>) => model.faults.map(({ prior }) => prior);

describe('parts for one visit', () => {
  test('the fewest and the cheapest of all sets, on 300 random models', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seeded(seed);
      const model = randomModel(random);
      const wanted = random();
      const enough = everyLoad(model).filter(({ chance }) => chance >= wanted - 1e-12);
      const costOf = (parts: readonly string[]) =>
        model.parts.reduce((all, { id, cost }) => (parts.includes(id) ? all + cost : all), 0);
      const few = loadFor(model, priors(model), wanted);
      expect(few.chance).toBeGreaterThanOrEqual(wanted - 1e-9);
      expect(few.parts.length, `seed ${seed}`).toBe(Math.min(...enough.map(({ size }) => size)));
      const cheap = loadFor(model, priors(model), wanted, 'cost');
      expect(costOf(cheap.parts), `seed ${seed}`).toBe(Math.min(...enough.map(({ cost }) => cost)));
    }
  });

  test('the best load of so many parts, on 300 random models', () => {
    for (let seed = 1; seed <= 300; seed++) {
      const random = seeded(seed);
      const model = randomModel(random);
      const count = whole(0, 4, random);
      const fitting = everyLoad(model).filter(({ size }) => size <= count);
      const best = bestLoad(model, priors(model), count);
      expect(best.parts.length).toBeLessThanOrEqual(count);
      expect(best.chance, `seed ${seed}`).toBeCloseTo(
        Math.max(...fitting.map(({ chance }) => chance)),
        12,
      );
    }
  });

  test('a repair that needs two parts is finished by both only', () => {
    const model = modelOf({ priors: [6, 4], parts: [[0, 1], [2]], costs: [1, 1, 1] });
    expect(bestLoad(model, priors(model), 1)).toEqual({ parts: ['p2'], chance: 0.4 });
    expect(bestLoad(model, priors(model), 2)).toEqual({ parts: ['p0', 'p1'], chance: 0.6 });
    expect(loadFor(model, priors(model), 1).parts).toEqual(['p0', 'p1', 'p2']);
  });

  test('no part is loaded that no repair needs', () => {
    const model = modelOf({ priors: [1], parts: [[]], costs: [1, 1] });
    expect(loadFor(model, [1], 1)).toEqual({ parts: [], chance: 1 });
    expect(bestLoad(model, [1], 2)).toEqual({ parts: [], chance: 1 });
  });

  test('a chance above 1 is refused', () => {
    const model = modelOf({ priors: [1], parts: [[0]], costs: [1] });
    expect(() => loadFor(model, [1], 1.01)).toThrow(RangeError);
  });

  test('the published model: a motor that does not turn calls for the latch assembly', () => {
    const model = realModel();
    const now = shares(model, told('since.over-4', 'near.quiet', 'listen.click'));
    expect(bestLoad(model, now, 1).parts).toEqual(['latch-assembly']);
    const chances = [0, 1, 2, 3].map((count) => bestLoad(model, now, count).chance);
    expect(chances).toEqual(chances.toSorted((a, b) => a - b));
  });
});
