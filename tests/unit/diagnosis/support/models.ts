import type { Random } from '../../../../src/diagnosis/random.ts';
import type { Costs, Model } from '../../../../src/diagnosis/types.ts';

/** A model in plain words and whole numbers; every row is in parts of its own sum. */
export interface Plain {
  readonly priors: readonly number[];
  /** For each question, for each fault, a row over its answers `a0`, `a1`, … */
  readonly questions?: readonly (readonly (readonly number[])[])[];
  readonly checks?: readonly {
    readonly minutes: number;
    readonly access?: readonly number[];
    readonly finds: readonly number[];
    readonly after?: readonly number[];
  }[];
  readonly access?: readonly number[];
  /** For each fault the parts its repair needs. */
  readonly parts?: readonly (readonly number[])[];
  /** For each part, what carrying it costs. */
  readonly costs?: readonly number[];
  /** For each part those that come with it. */
  readonly covers?: readonly (readonly number[])[];
  /** The parts that fit any range. */
  readonly any?: readonly number[];
}

/** A second visit costs 100, carrying a part its price. */
export const COSTS: Costs = { currency: 'USD', secondVisit: 100, hourlyRate: 60, carrying: 1 };

const shared = (row: readonly number[]) => {
  const total = row.reduce((a, b) => a + b, 0);
  return row.map((one) => one / total);
};

/**
 * The model of plain figures: faults `f0`…, questions `q0`…, checks `c0`…, access
 * `a0`…, parts `p0`…. A check gives `found` for what it finds 9 times in 10, for
 * the rest 1 time in 10. The fixed order is that of the checks.
 */
export function modelOf(plain: Plain): Model {
  const { checks = [], access = [], parts = [], costs = [], covers = [], any = [] } = plain;
  const faults = shared(plain.priors).map((prior, index) => ({
    id: `f${index}`,
    prior,
    parts: (parts[index] ?? []).map((part) => `p${part}`),
  }));
  return {
    guide: 'plain',
    source: 'assumption-common-practice',
    faults,
    evidence: (plain.questions ?? []).map((rows, index) => ({
      key: `q${index}`,
      answers: (rows[0] ?? []).map((_, answer) => `a${answer}`),
      rows: rows.map(shared),
      rowOf: rows.map((_, row) => row),
    })),
    access: access.map((minutes, index) => ({ id: `a${index}`, minutes })),
    checks: checks.map(({ minutes, access: needs = [], finds, after = [] }, index) => ({
      id: `c${index}`,
      minutes,
      access: needs.map((one) => `a${one}`),
      reading: 'look',
      tools: [],
      skills: [],
      cautions: [],
      after: after.map((one) => `c${one}`),
      results: [
        { id: 'clear', pointsTo: [] },
        { id: 'found', pointsTo: finds.map((fault) => `f${fault}`) },
      ],
      likelihoods: faults.map((_, fault) => (finds.includes(fault) ? [0.1, 0.9] : [0.9, 0.1])),
    })),
    parts: costs.map((price, index) => ({
      id: `p${index}`,
      price,
      fits: any.includes(index) ? 'any' : 'model',
      covers: (covers[index] ?? []).map((part) => `p${part}`),
    })),
    costs: COSTS,
    fixedOrder: checks.map((_, index) => `c${index}`),
  } as unknown as Model;
}

/** A whole number from `least` to `most`. */
export function whole(least: number, most: number, random: Random): number {
  return least + Math.floor(random() * (most - least + 1));
}

/** A list of so many, each made anew. */
export function many<T>(count: number, make: (index: number) => T): T[] {
  return Array.from({ length: count }, (_, index) => make(index));
}
