import { details, models } from '../../src/content/load.ts';
import { worthAsking } from '../../src/diagnosis/ask.ts';
import { COMPLAINT, VISIT, detailKey } from '../../src/diagnosis/evidence.ts';
import { loadFor, metBy } from '../../src/diagnosis/parts.ts';
import { perturbed } from '../../src/diagnosis/perturb.ts';
import { openingFor } from '../../src/diagnosis/plan.ts';
import type { Route } from '../../src/diagnosis/plan.ts';
import { shares } from '../../src/diagnosis/posterior.ts';
import { seeded } from '../../src/diagnosis/random.ts';
import type { Random } from '../../src/diagnosis/random.ts';
import { reliability } from '../../src/diagnosis/reliability.ts';
import type { Claim } from '../../src/diagnosis/reliability.ts';
import type { CheckId, Evidence, Model } from '../../src/diagnosis/types.ts';
import type { Guide } from '../../src/guide/types.ts';
import { habits } from '../unit/diagnosis/support/habits.ts';
import { draw, simulate } from '../unit/diagnosis/support/simulate.ts';
import type { Manner, Simulated } from '../unit/diagnosis/support/simulate.ts';
import type { Row } from './row.ts';

/** Batches of visits: an interval from how the batches differ. */
const BATCHES = 20;
/** 1,000 visits a guide for what is ranked, 400 for what is planned and walked. */
const RANKED = 50;
const WALKED = 20;
/** Two-sided 95 % of the normal distribution. */
const Z = 1.96;

/** What one visit counts towards each figure; nothing where it does not bear on it. */
type Tally = Readonly<Record<string, number | undefined>>;

const percent = (holds: boolean) => (holds ? 100 : 0);

function ranked(model: Model, { fault, evidence }: Simulated) {
  const now = shares(model, evidence);
  const order = [...now.keys()].sort((a, b) => (now[b] ?? 0) - (now[a] ?? 0));
  return { now, right: order[0] === fault, three: order.slice(0, 3).includes(fault) };
}

/** The evidence of what happened and what the display shows, the complaint among it. */
const TOLD = /^(complaint|visit|display|still-cleaning|word|.*\/(what|when|since))$/;

/** How the answers rank, with some of them or all, and whether the load finishes the repair. */
function ranking(model: Model, visit: Simulated): Tally {
  const { fault, evidence } = visit;
  const { now, right, three } = ranked(model, visit);
  const only = (keep: (key: string) => boolean) =>
    ranked(model, { fault, evidence: evidence.filter(({ key }) => keep(key)) });
  const none = only((key) => key === COMPLAINT || key === VISIT);
  const some = only((key) => TOLD.test(key));
  const met = metBy(model, loadFor(model, now).parts);
  const { parts: needed = [], unlisted } = model.faults[fault] ?? {};
  return {
    'first guess right': percent(right),
    'first guess, display and what happened only': percent(some.right),
    'first guess, no answers': percent(none.right),
    'share claimed of the first': 100 * Math.max(...now),
    'among the first three': percent(three),
    'among the first three, no answers': percent(none.three),
    // What is not listed is finished by no part that was loaded for it.
    'finished at once': percent(!unlisted && needed.every((part) => met.has(part))),
  };
}

/** First guess of visits that answer every detail: with none of them, the three asked, all. */
function asked(model: Model, { fault, evidence }: Simulated): Tally {
  const isDetail = ({ key }: Evidence[number]) => key.startsWith(detailKey(''));
  const walk = evidence.filter((one) => !isDetail(one));
  const keys = worthAsking(model, walk, 3).map(({ key }) => key);
  const three = evidence.filter((one) => !isDetail(one) || keys.includes(one.key));
  const right = (given: Evidence) => percent(ranked(model, { fault, evidence: given }).right);
  return {
    'first guess, no details': right(walk),
    'first guess, the three details asked': right(three),
    'first guess, all details': right(evidence),
  };
}

/** What each check would show on this range: the file's own imperfect results. */
function resultsOf(model: Model, fault: number, random: Random): ReadonlyMap<CheckId, string> {
  return new Map(
    model.checks.map(({ id, results, likelihoods }) => [
      id,
      results[draw(likelihoods[fault] ?? [], random)]?.id ?? '',
    ]),
  );
}

/** Minutes until a result rules the fault in, and whether the first result that rules in any is wrong. */
function walked(
  model: Model,
  fault: number,
  results: ReadonlyMap<CheckId, string>,
  steps: readonly { readonly check: CheckId; readonly minutes: number }[],
): { minutes?: number; misled?: boolean } {
  let clock = 0;
  let misled: boolean | undefined;
  for (const { check, minutes } of steps) {
    clock += minutes;
    const shown = model.checks.find(({ id }) => id === check)?.results;
    const rules = shown?.find(({ id }) => String(id) === results.get(check))?.pointsTo ?? [];
    const found = rules.some((id) => id === model.faults[fault]?.id);
    if (rules.length > 0) misled ??= !found;
    if (found) return { minutes: clock, ...(misled === undefined ? {} : { misled }) };
  }
  return misled === undefined ? {} : { misled };
}

/** What each check of a route takes after those before it, for any order of them. */
function stepper(model: Model, evidence: Evidence) {
  const opening = openingFor(model, evidence);
  const kind = evidence.find(({ key }) => key === 'detail.kind')?.answer ?? '';
  return (check: CheckId, open: Set<string>): number => {
    const found = model.checks.find(({ id }) => id === check);
    const needs = (found ? opening(found) : []).filter((id) => !open.has(id));
    const minutes = needs.map((id) => {
      const group = model.access.find((one) => one.id === id);
      return group?.kinds?.[kind] ?? group?.minutes ?? 0;
    });
    for (const id of needs) open.add(id);
    return minutes.reduce((a, b) => a + b, found?.minutes ?? 0);
  };
}

/** Share per minute: of the checks that may come next always the one that finds most a minute. */
function perMinute(model: Model, evidence: Evidence, { steps }: Route) {
  const minutesOf = stepper(model, evidence);
  const now = shares(model, evidence);
  const open = new Set<string>();
  const found = new Set<number>();
  const left = new Set(steps.map(({ check }) => check));
  const finds = (check: CheckId) => {
    const ids = model.checks.find(({ id }) => id === check)?.results.flatMap((r) => r.pointsTo);
    return model.faults.flatMap(({ id }, fault) => (ids?.includes(id) ? fault : []));
  };
  const order: { check: CheckId; minutes: number }[] = [];
  while (left.size > 0) {
    const ready = [...left].filter((check) =>
      (model.checks.find(({ id }) => id === check)?.after ?? []).every((id) => !left.has(id)),
    );
    const rate = (check: CheckId) =>
      finds(check).reduce((a, fault) => a + (found.has(fault) ? 0 : (now[fault] ?? 0)), 0) /
      minutesOf(check, new Set(open));
    const [next] = ready.toSorted((a, b) => rate(b) - rate(a));
    if (next === undefined) break;
    order.push({ check: next, minutes: minutesOf(next, open) });
    left.delete(next);
    for (const fault of finds(next)) found.add(fault);
  }
  return order;
}

/** Orders of checks, each walked on the same range with the same results. */
function walking(model: Model, { fault, evidence }: Simulated, random: Random): Tally {
  const results = resultsOf(model, fault, random);
  const walk = (steps: readonly { readonly check: CheckId; readonly minutes: number }[]) =>
    walked(model, fault, results, steps);
  const bare = evidence.filter(({ key }) => key === COMPLAINT || key === VISIT);
  const [full, none, some] = [evidence, bare, evidence.filter(({ key }) => TOLD.test(key))].map(
    (given) => habits(model, given),
  );
  if (!full || !none || !some) throw new Error('no plans');
  const minutesOf = stepper(model, evidence);
  const known = model.checks
    .filter(({ results: all }) =>
      all.some(({ pointsTo }) => pointsTo.some((id) => id === model.faults[fault]?.id)),
    )
    .map(({ id }) => minutesOf(id, new Set()));
  const ways = {
    'this order, all answers': walk(full.best.steps),
    'share per minute, all answers': walk(perMinute(model, evidence, full.best)),
    'likeliest first, all answers': walk(full.likeliest.steps),
    'this order, display and what happened only': walk(some.best.steps),
    'this order, no answers': walk(none.best.steps),
    'usual fixed order, no answers': walk(none.fixed.steps),
  };
  const list = Object.entries(ways);
  const all = known.length > 0 && list.every(([, { minutes }]) => minutes !== undefined);
  const misled = ({ misled: one }: { misled?: boolean }) =>
    one === undefined ? undefined : percent(one);
  return {
    ...Object.fromEntries(
      list.map(([name, { minutes }]) => [`minutes, ${name}`, all ? minutes : undefined]),
    ),
    'minutes, who knows the fault (bound)': all ? Math.min(...known) : undefined,
    'found by no check of this order': percent(
      ways['this order, all answers'].minutes === undefined,
    ),
    'first finding is wrong, this order': misled(ways['this order, all answers']),
    'first finding is wrong, fixed order': misled(ways['usual fixed order, no answers']),
  };
}

const mean = (list: readonly number[]) => list.reduce((a, b) => a + b, 0) / list.length;

/** The mean of each figure over a batch. */
function means(tallies: readonly Tally[]): Tally {
  const names = Object.keys(tallies[0] ?? {});
  return Object.fromEntries(
    names.map((name) => [name, mean(tallies.flatMap((one) => one[name] ?? []))]),
  );
}

/** Mean and 95 % interval of the batch means: right even where a batch has a truth of its own. */
function row(name: string, all: readonly number[], what: string): Row {
  const batches = all.filter((one) => !Number.isNaN(one));
  const value = mean(batches);
  const variance = batches.reduce((a, b) => a + (b - value) ** 2, 0) / (batches.length - 1);
  const half = Z * Math.sqrt(variance / batches.length);
  return {
    name: `${name}, ${what}`,
    value,
    unit: name.startsWith('minutes') ? 'min' : '%',
    note: `95 % interval ${(value - half).toFixed(1)} to ${(value + half).toFixed(1)}`,
  };
}

interface Measure {
  readonly inBatch: number;
  /** By how much each figure of the world may be off from ours, anew for every batch. */
  readonly factor?: number;
  readonly manner?: Partial<Manner>;
}

function modelOf(guide: Guide): Model {
  const model = models()[guide.id];
  if (!model) throw new Error(`no model for ${guide.id}`);
  return model;
}

function batchesOf<T>(
  guide: Guide,
  { inBatch, factor = 1, manner = {} }: Measure,
  use: (visit: Simulated, random: Random) => T,
): T[][] {
  return Array.from({ length: BATCHES }, (_, index) => {
    const random = seeded(1 + index);
    const truth = perturbed(modelOf(guide), factor, random);
    const visits = simulate({ guide, details: details(), truth, manner }, inBatch, random);
    return visits.map((visit) => use(visit, random));
  });
}

function rowsOf(batches: readonly (readonly Tally[])[], what: string): Row[] {
  const all = batches.map(means);
  return Object.keys(all[0] ?? {}).map((name) =>
    row(
      name,
      all.map((one) => one[name] ?? NaN),
      what,
    ),
  );
}

/**
 * Visits that begin in a guide, drawn from the figures themselves: answers about one fact hang
 * together, some faults are on no list, and what cures itself needs no visit. How well a
 * diagnosis does whose figures are right: it says nothing about how right they are.
 */
export function guideRows(guide: Guide): Row[] {
  const model = modelOf(guide);
  const rank = (visit: Simulated) => ranking(model, visit);
  return [
    ...rowsOf(batchesOf(guide, { inBatch: RANKED }, rank), guide.id),
    ...rowsOf(
      batchesOf(guide, { inBatch: RANKED, manner: { details: 1 } }, (one) => asked(model, one)),
      guide.id,
    ),
    ...rowsOf(
      batchesOf(guide, { inBatch: WALKED }, (one, random) => walking(model, one, random)),
      guide.id,
    ),
  ];
}

/** Worlds that are not as the model says, over all guides together. */
const WORLDS: Readonly<Record<string, Omit<Measure, 'inBatch'>>> = {
  'as the model says': {},
  'no answer unsure': { manner: { unsure: 0 } },
  '20 % of the answers unsure': { manner: { unsure: 0.2 } },
  '10 % of the answers wrong': { manner: { wrong: 0.1 } },
  '20 % of the answers wrong': { manner: { wrong: 0.2 } },
  'a second fault in 5 % of the visits': { manner: { second: 0.05 } },
  'a second fault in 10 % of the visits': { manner: { second: 0.1 } },
  'a second fault in 20 % of the visits': { manner: { second: 0.2 } },
  'every third answer alike beyond what the model knows': { manner: { alike: 1 / 3 } },
  'figures off by up to ×2': { factor: 2 },
};

/** One line of the plot: the interval drawn, ● the share that was right, | what was claimed. */
function plotted({
  low,
  high,
  right,
  claimed,
}: Record<'low' | 'high' | 'right' | 'claimed', number>) {
  const place = (share: number) => Math.round(share * 50);
  return Array.from({ length: 51 }, (_, at) => {
    if (at === place(right)) return at === place(claimed) ? '⦿' : '●';
    if (at === place(claimed)) return '|';
    return at >= place(low) && at <= place(high) ? '─' : ' ';
  }).join('');
}

function curve(claims: readonly Claim[], what: string): Row[] {
  return reliability(claims).map(({ from, to, visits, claimed, right, interval }) => ({
    name: `said ${(100 * from).toFixed(0)} to ${(100 * to).toFixed(0)} %, right, ${what}`,
    value: (100 * right) / visits,
    unit: '%',
    note: `${plotted({ ...interval, right: right / visits, claimed })} ${((100 * visits) / claims.length).toFixed(1)} % of visits`,
  }));
}

/** The guides together, as many visits of each, in worlds that are more and more unlike the model. */
export function worldRows(guides: readonly Guide[]): Row[] {
  return Object.entries(WORLDS).flatMap(([what, world]) => {
    const each = guides.map((guide) =>
      batchesOf(guide, { inBatch: WALKED, ...world }, (visit) => ranked(modelOf(guide), visit)),
    );
    const batches = Array.from({ length: BATCHES }, (_, batch) =>
      each.flatMap((one) => one[batch] ?? []),
    );
    const tallies = batches.map((visits) =>
      visits.map(({ now, right, three }) => ({
        'first guess right': percent(right),
        'share claimed of the first': 100 * Math.max(...now),
        'among the first three': percent(three),
      })),
    );
    const claims = batches.flat().map(({ now, right }) => ({ claimed: Math.max(...now), right }));
    const plotted = what === 'as the model says' || 'alike' in (world.manner ?? {});
    return [...rowsOf(tallies, what), ...(plotted ? curve(claims, what) : [])];
  });
}
