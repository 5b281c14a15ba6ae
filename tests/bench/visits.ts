import { details, models } from '../../src/content/load.ts';
import { loadFor, metBy } from '../../src/diagnosis/parts.ts';
import { perturbed } from '../../src/diagnosis/perturb.ts';
import { plan } from '../../src/diagnosis/plan.ts';
import type { Route } from '../../src/diagnosis/plan.ts';
import { shares } from '../../src/diagnosis/posterior.ts';
import { seeded } from '../../src/diagnosis/random.ts';
import type { Model } from '../../src/diagnosis/types.ts';
import type { Guide } from '../../src/guide/types.ts';
import { simulate } from '../unit/diagnosis/support/simulate.ts';
import type { Simulated } from '../unit/diagnosis/support/simulate.ts';
import type { Row } from './row.ts';

/** 20 batches of 50: 1,000 visits a guide, and an interval from how the batches differ. */
const BATCHES = 20;
const IN_BATCH = 50;
/** Two-sided 95 % of the normal distribution. */
const Z = 1.96;

/** What one visit counts towards each figure; nothing towards the minutes where no check finds it. */
type Tally = Readonly<Record<string, number | undefined>>;

/** Minutes until the check that finds the fault, each check conclusive for what it finds. */
function minutesTo(model: Model, fault: number, { steps }: Route): number | undefined {
  let clock = 0;
  for (const { check, minutes } of steps) {
    clock += minutes;
    const results = model.checks.find(({ id }) => id === check)?.results ?? [];
    if (results.some(({ pointsTo }) => pointsTo.some((id) => id === model.faults[fault]?.id)))
      return clock;
  }
  return undefined;
}

function tally(model: Model, { fault, evidence }: Simulated): Tally {
  const now = shares(model, evidence);
  const order = [...now.keys()].sort((a, b) => (now[b] ?? 0) - (now[a] ?? 0));
  const { best, fixed, likeliest } = plan(model, evidence);
  const minutes = [best, fixed, likeliest].map((route) => minutesTo(model, fault, route));
  const [first, usual, likely] = minutes.includes(undefined) ? [] : minutes;
  const met = metBy(model, loadFor(model, now).parts);
  // What is not listed is finished by no part that was loaded for it.
  const { parts: needed = [], unlisted } = model.faults[fault] ?? {};
  return {
    'first guess right': order[0] === fault ? 100 : 0,
    'share claimed of the first': 100 * Math.max(...now),
    'among the first three': order.slice(0, 3).includes(fault) ? 100 : 0,
    'minutes to the fault, plan': first,
    'minutes, usual fixed order': usual,
    'minutes, likeliest first': likely,
    'found by no check of the plan': first === undefined ? 100 : 0,
    'finished at once': !unlisted && needed.every((part) => met.has(part)) ? 100 : 0,
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
function row(name: string, batches: readonly number[], what: string): Row {
  const value = mean(batches);
  const variance = batches.reduce((a, b) => a + (b - value) ** 2, 0) / (batches.length - 1);
  const half = Z * Math.sqrt(variance / batches.length);
  return {
    name: `${name}${what}`,
    value,
    unit: name.startsWith('minutes') ? 'min' : '%',
    note: `95 % interval ${(value - half).toFixed(1)} to ${(value + half).toFixed(1)}`,
  };
}

/**
 * Visits that begin in a guide, drawn from the figures themselves (factor 1), or from figures of
 * which each is off by up to `factor`, anew for every batch; judged by ours. Answers about one
 * fact hang together, some faults are on no list, and what cures itself needs no visit. How
 * well a diagnosis does whose figures are right, and how much it depends on that: it says
 * nothing about how right they are.
 */
export function simulatedVisits(guide: Guide, factor: number): Row[] {
  const model = models()[guide.id];
  if (!model) throw new Error(`no model for ${guide.id}`);
  const batches = Array.from({ length: BATCHES }, (_, index) => {
    const random = seeded(1 + index);
    const truth = perturbed(model, factor, random);
    const visits = simulate({ guide, details: details(), truth }, IN_BATCH, random);
    return means(visits.map((visit) => tally(model, visit)));
  });
  const what = `, ${guide.id}${factor === 1 ? '' : `, truth off by up to ×${factor}`}`;
  return Object.keys(batches[0] ?? {}).map((name) =>
    row(
      name,
      batches.map((one) => one[name] ?? NaN),
      what,
    ),
  );
}
