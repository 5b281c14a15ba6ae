import { describe, expect, test } from 'vitest';
import { checkKey } from '../../../src/diagnosis/evidence.ts';
import { finishChance, loadFor, metBy, weigh } from '../../../src/diagnosis/parts.ts';
import { stillOpen } from '../../../src/diagnosis/plan.ts';
import { shares } from '../../../src/diagnosis/posterior.ts';
import { seeded } from '../../../src/diagnosis/random.ts';
import type { Random } from '../../../src/diagnosis/random.ts';
import type { Model, PartId } from '../../../src/diagnosis/types.ts';
import { COSTS, many, modelOf, whole } from './support/models.ts';
import { given, realModel, told } from './support/real.ts';

/** Repairs of up to all parts, some parts coming with others. */
function randomModel(random: Random): Model {
  const parts = whole(1, 8, random);
  const faults = whole(1, 10, random);
  return modelOf({
    priors: many(faults, () => whole(1, 20, random)),
    parts: many(faults, () => many(parts, (part) => part).filter(() => random() < 0.3)),
    costs: many(parts, () => whole(1, 25, random)),
    covers: many(parts, (part) =>
      many(parts, (other) => other).filter((o) => o !== part && random() < 0.1),
    ),
  });
}

/** Every set of parts, by adding or not adding each in turn, with its expected cost. */
function everyLoad(model: Model) {
  const sets = model.parts.reduce<(typeof model.parts)[]>(
    (all, part) => all.flatMap((set) => [set, [...set, part]]),
    [[]],
  );
  return sets.map((set) => {
    const have = new Set(set.flatMap(({ id, covers = [] }) => [id, ...covers]));
    const cured = model.faults.filter(({ parts }) => parts.every((part) => have.has(part)));
    const chance = cured.reduce((all, { prior }) => all + prior, 0);
    const carried = set.reduce((all, { price }) => all + price * COSTS.carrying, 0);
    return { set, cost: carried + COSTS.secondVisit * (1 - chance) };
  });
}

const priors = (model: Model) => model.faults.map(({ prior }) => prior);
const ofPriors = (model: Model) => loadFor(model, priors(model));

describe('parts for one visit', () => {
  test('the least expected cost of all sets, on 400 random models', () => {
    let several = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const model = randomModel(seeded(seed));
      const load = ofPriors(model);
      const all = everyLoad(model);
      const same = all.find(({ set }) => set.map(({ id }) => id).join() === load.parts.join());
      expect(load.cost, `seed ${seed}`).toBeCloseTo(Math.min(...all.map(({ cost }) => cost)), 9);
      expect(load.cost, `seed ${seed}`).toBeCloseTo(same?.cost ?? NaN, 9);
      if (load.parts.length > 1) several++;
    }
    expect(several).toBeGreaterThan(100);
  });

  test('each part along saves more than it costs, each left behind no more, on 400 random models', () => {
    let left = 0;
    for (let seed = 1; seed <= 400; seed++) {
      const model = randomModel(seeded(seed));
      const load = ofPriors(model);
      for (const { part, saves, costs } of weigh(model, priors(model), load))
        if (load.parts.includes(part.id)) expect(saves, `seed ${seed}`).toBeGreaterThan(costs);
        else if (++left) expect(saves, `seed ${seed}`).toBeLessThanOrEqual(costs + 1e-9);
    }
    expect(left).toBeGreaterThan(100);
  });

  test('two parts that save nothing alone are along together, where a greedy choice takes neither', () => {
    const model = modelOf({ priors: [6, 4], parts: [[0, 1], []], costs: [20, 20] });
    expect(ofPriors(model)).toEqual({ parts: ['p0', 'p1'], chance: 1, cost: 40 });
  });

  test('a part that comes with another is not carried beside it, and counts for it', () => {
    const plain = { priors: [5, 5], parts: [[0], [1]], costs: [15, 10] };
    expect(ofPriors(modelOf(plain)).parts).toEqual(['p0', 'p1']);
    expect(ofPriors(modelOf({ ...plain, covers: [[1]] }))).toEqual({
      parts: ['p0'],
      chance: 1,
      cost: 15,
    });
  });

  test('no part is loaded that no repair needs, nor for what is on no list', () => {
    const model = modelOf({ priors: [1], parts: [[]], costs: [1, 1] });
    expect(ofPriors(model)).toEqual({ parts: [], chance: 1, cost: 0 });
    const [fault] = model.faults;
    const unlisted = { ...model, faults: [{ ...fault, unlisted: true }] } as Model;
    expect(ofPriors(unlisted)).toEqual({ parts: [], chance: 0, cost: 100 });
  });

  test('what is aboard costs nothing and is counted on', () => {
    const model = modelOf({ priors: [1], parts: [[0, 1]], costs: [60, 60], any: [1] });
    expect(ofPriors(model).parts).toEqual([]);
    const aboard = new Set(['p1' as PartId]);
    expect(loadFor(model, [1], { aboard, fits: 'model' }).parts).toEqual(['p0']);
  });

  test('the dearer a second visit, the more is along: the published model', () => {
    const model = realModel();
    const now = shares(model, told('since.1-to-4', 'display.error', 'forced.yes'));
    const counts = [20, 75, 300, 2000].map(
      (secondVisit) =>
        loadFor({ ...model, costs: { ...model.costs, secondVisit } }, now).parts.length,
    );
    expect(counts).toEqual(counts.toSorted((a, b) => a - b));
    expect(counts.at(-1)).toBeGreaterThan(counts[0] ?? NaN);
  });
});

describe('a latch that hums on and on, in the published model', () => {
  const model = realModel();
  const hums = told('since.over-4', 'display.lock', 'listen.hum-on');
  const now = shares(model, hums);

  test('one latch assembly finishes most, as its switch comes with it', () => {
    const { parts, chance } = loadFor(model, now);
    expect(parts).toEqual(['latch-assembly']);
    expect(chance).toBeGreaterThan(0.85);
    // As if nothing came with it.
    expect(finishChance(model, now, new Set(parts))).toBeLessThan(0.6);
    expect(metBy(model, parts)).toContain('latch-switch');
  });

  test('a part leaves the load once its check has shown it good', () => {
    const taken = (...pairs: readonly string[]) =>
      loadFor(
        model,
        stillOpen(model, [...hums, ...given(...pairs.map((pair) => `check.${pair}`))]),
      ).parts.map(String);
    expect(taken('latch-switch.always-open')).toEqual(['latch-switch']);
    const motor = ['latch-look.straight', 'latch-motor.continuity'];
    expect(taken(...motor)).toContain('latch-switch');
    expect(taken(...motor, 'latch-switch.follows-plunger')).not.toContain('latch-switch');
    expect(taken('latch-switch.follows-plunger')).toEqual(['latch-assembly']);
  });

  test('no part is along whose every fault was looked for and not found', () => {
    const clear = model.checks.map(({ id, results }) => ({
      key: checkKey(id),
      answer: String(results.find(({ pointsTo }) => pointsTo.length === 0)?.id),
    }));
    expect(loadFor(model, stillOpen(model, hums)).parts).not.toEqual([]);
    expect(loadFor(model, stillOpen(model, [...hums, ...clear])).parts).toEqual([]);
  });
});
