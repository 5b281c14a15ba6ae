import { guides } from '../../src/content/load.ts';
import { COMPLAINT } from '../../src/diagnosis/evidence.ts';
import { bestOrder } from '../../src/diagnosis/order.ts';
import { plan } from '../../src/diagnosis/plan.ts';
import { posterior } from '../../src/diagnosis/posterior.ts';
import { seeded } from '../../src/diagnosis/random.ts';
import { realContext, realModel } from '../unit/diagnosis/support/real.ts';
import { randomSearch } from '../unit/diagnosis/support/orders.ts';
import { simulate } from '../unit/diagnosis/support/simulate.ts';
import type { Row } from './row.ts';
import { guideRows, worldRows } from './visits.ts';

/** Median processor time of one call: what it takes alone, even on a busy machine. */
function median<T>(cases: readonly T[], use: (one: T) => unknown): number {
  for (const one of cases.slice(0, 20)) use(one);
  const times = cases.map((one) => {
    const start = process.threadCpuUsage();
    use(one);
    const { user, system } = process.threadCpuUsage(start);
    return (user + system) / 1000;
  });
  return times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? NaN;
}

/** 16 checks, nothing that would spare the search an order: faults found by several checks. */
function hardest() {
  return Array.from({ length: 60 }, (_, index) =>
    randomSearch({ checks: 16, faults: 31, groups: 6, tangled: false }, seeded(index)),
  ).map((search) => ({
    ...search,
    checks: search.checks.map((check, bit) => ({
      ...check,
      finds: check.finds | (1 << (16 + (bit >> 1))),
    })),
  }));
}

/** The diagnosis: how long it takes, and how well it does on visits drawn from its own figures. */
export function benchDiagnosis(): Promise<Row[]> {
  const model = realModel();
  const visits = simulate({ ...realContext(), truth: model }, 300, seeded(1));
  const complaints = model.evidence.find(({ key }) => key === COMPLAINT)?.answers ?? [];
  const complaining = guides().filter(({ id }) => complaints.includes(id));
  return Promise.resolve([
    {
      name: 'plan of 16 checks, no order spared',
      value: median(hardest(), bestOrder),
      unit: 'ms',
      ceiling: 50,
      note: 'median of 60, processor time',
    },
    {
      name: 'posterior and plan of one note',
      value: median(visits, ({ evidence }) => [posterior(model, evidence), plan(model, evidence)]),
      unit: 'ms',
      ceiling: 5,
      note: `median of 300 notes, ${model.checks.length} checks, processor time`,
    },
    ...complaining.flatMap(guideRows),
    ...worldRows(complaining),
  ]);
}
