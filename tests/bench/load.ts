import { details, guides, models } from '../../src/content/load.ts';
import { finishChance, loadFor, metBy, needChance } from '../../src/diagnosis/parts.ts';
import { shares } from '../../src/diagnosis/posterior.ts';
import { seeded } from '../../src/diagnosis/random.ts';
import { COMPLAINT } from '../../src/diagnosis/evidence.ts';
import type { Model, PartId } from '../../src/diagnosis/types.ts';
import { partsToBring } from '../../src/route/parts-to-bring.ts';
import { COSTS, many, modelOf, whole } from '../unit/diagnosis/support/models.ts';
import { draw, simulate } from '../unit/diagnosis/support/simulate.ts';
import { alongOf, walked } from '../unit/route/support/day.ts';
import type { Row } from './row.ts';

/** Visits a guide, and days of a route. */
const VISITS = 300;
const DAYS = 100_000;
/** Two-sided 95 % of the normal distribution. */
const Z = 1.96;
/** What a second visit may cost a firm, the middle one as in `content/firm.yaml`. */
const SECOND = [75, 150, 300] as const;
/** Of the other rule: the parts chosen from, and the chance that is to be enough. */
const [CHOICES, ENOUGH] = [10, 0.9];

const sum = (list: readonly number[]) => list.reduce((a, b) => a + b, 0);

function interval(list: readonly number[]): { mean: number; half: number } {
  const mean = sum(list) / list.length;
  const variance = sum(list.map((one) => (one - mean) ** 2)) / (list.length - 1);
  return { mean, half: Z * Math.sqrt(variance / list.length) };
}

const carried = ({ parts, costs }: Model, load: readonly PartId[]) =>
  costs.carrying * sum(parts.map(({ id, price }) => (load.includes(id) ? price : 0)));

/** The fewest parts with which nine in ten visits with a listed fault are finished, or the most. */
function fewest(model: Model, now: readonly number[]): readonly PartId[] {
  const likely = model.parts
    .map(({ id }) => ({ id, needed: needChance(model, now, (part) => part === id) }))
    .toSorted((a, b) => b.needed - a.needed)
    .slice(0, CHOICES)
    .map(({ id }) => id);
  const listed = sum(now.filter((_, fault) => !model.faults[fault]?.unlisted));
  const all = likely
    .reduce<PartId[][]>((sets, part) => sets.flatMap((set) => [set, [...set, part]]), [[]])
    .map((set) => ({ set, chance: finishChance(model, now, metBy(model, set)) / listed }));
  const most = Math.min(ENOUGH, Math.max(...all.map(({ chance }) => chance)));
  const [best] = all
    .filter(({ chance }) => chance >= most - 1e-9)
    .toSorted(
      (a, b) => a.set.length - b.set.length || carried(model, a.set) - carried(model, b.set),
    );
  return best?.set ?? [];
}

/** Carrying, and second visits, by both rules over the same visits. */
function againstFewest(): Row[] {
  const asked = guides().filter(({ id }) =>
    models()[id]?.evidence.some(({ key, answers }) => key === COMPLAINT && answers.includes(id)),
  );
  const visits = asked.flatMap((guide) => {
    const model = models()[guide.id];
    if (!model) throw new Error('no model');
    const world = { guide, details: details(), truth: model };
    return simulate(world, VISITS, seeded(3)).map(({ fault, evidence }) => {
      const now = shares(model, evidence);
      return { guide: String(guide.id), model, fault, now, few: fewest(model, now) };
    });
  });
  return SECOND.flatMap((secondVisit) => {
    const counted = visits.map(({ guide, model, fault, now, few }) => {
      const own = { ...model, costs: { ...model.costs, secondVisit } };
      const { parts: needed = [], unlisted } = model.faults[fault] ?? {};
      const costOf = (load: readonly PartId[]) => {
        const met = metBy(model, load);
        const last = !unlisted && needed.every((part) => met.has(part));
        return carried(model, load) + (last ? 0 : secondVisit);
      };
      return { guide, ours: costOf(loadFor(own, now).parts), theirs: costOf(few) };
    });
    return [undefined, ...asked.map(({ id }) => String(id))].map((guide): Row => {
      const some = counted.filter((one) => guide === undefined || one.guide === guide);
      const theirs = interval(some.map((one) => one.theirs));
      const saved = interval(some.map((one) => one.theirs - one.ours));
      return {
        name: `carrying and second visits, one at $${secondVisit}, ${guide ?? 'all guides'}`,
        value: interval(some.map(({ ours }) => ours)).mean,
        unit: '$',
        note: `fewest parts for 90 %: ${theirs.mean.toFixed(1)}; saves ${saved.mean.toFixed(1)} ± ${saved.half.toFixed(1)}`,
      };
    });
  });
}

/** A route of the published models: how many of its visits need no second one, drawn by chance. */
function route(): Row {
  const random = seeded(9);
  const known = Object.values(models());
  const visits = known.map((model) => {
    const weights = model.faults.map(({ prior }) => prior * random() ** 4);
    return { model, shares: weights.map((one) => one / sum(weights)) };
  });
  const load = partsToBring(visits);
  const along = alongOf(visits, load);
  const days = many(DAYS, () => {
    const faults = visits.map((visit) => draw(visit.shares, random));
    return (100 * walked(visits, along, faults)) / visits.length;
  });
  const { mean, half } = interval(days);
  return {
    name: `round of ${visits.length}: visits that need no second one, simulated`,
    value: mean,
    unit: '%',
    note: `± ${half.toFixed(2)}; stated: ${(100 * load.chance).toFixed(2)}; ${load.stock.length} parts in common, ${[...load.own.values()].flat().length} by model`,
    ceiling: 100 * load.chance + 2 * half,
    floor: 100 * load.chance - 2 * half,
  };
}

/** Median processor time of a load of so many parts, each worth a look. */
function time(parts: number, ceiling: number): Row {
  const cases = many(40, (index) => {
    const random = seeded(index);
    const model = modelOf({
      priors: many(80, () => whole(1, 20, random)),
      parts: many(80, () => many(whole(0, 3, random), () => whole(0, parts - 1, random))),
      costs: many(parts, () => whole(1, 4, random) / 4),
    });
    return { model, now: model.faults.map(({ prior }) => prior), costs: COSTS };
  });
  const times = cases.map(({ model, now }) => {
    const start = process.threadCpuUsage();
    loadFor(model, now);
    const { user, system } = process.threadCpuUsage(start);
    return (user + system) / 1000;
  });
  return {
    name: `load of ${parts} parts`,
    value: times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN,
    unit: 'ms',
    ceiling,
    note: 'median of 40 models of 80 faults, processor time',
  };
}

/** The load: what it saves, whether it does what it says, and how long it takes. */
export function benchLoad(): Promise<Row[]> {
  return Promise.resolve([...againstFewest(), route(), time(12, 10), time(16, 60)]);
}
