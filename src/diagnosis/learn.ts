import { at, sum } from './numbers.ts';
import type { FaultsFile, TableFile } from './schema.ts';
import { OTHER } from './visits-schema.ts';
import type { RecordedVisit } from './visits-schema.ts';

export interface LearnOptions {
  /** How many visits each old distribution is worth. */
  readonly strength: number;
  /** Fewer visits than this leave a distribution as it is. */
  readonly minimum: number;
}

/** One distribution of the authors' file with new figures. */
export interface Change {
  /** Where each figure stands in the file, in the order of `before` and `after`. */
  readonly paths: readonly (readonly (string | number)[])[];
  /** Visits that speak for it. */
  readonly seen: number;
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** Figures are written with four decimals; none becomes 0, which no evidence could move. */
const PARTS = 10_000;

/** A distribution in whole ten-thousandths, none of them 0; the largest takes the rest. */
function rounded(p: readonly number[]): number[] {
  const parts = p.map((one) => Math.max(1, Math.round(one * PARTS)));
  const largest = parts.indexOf(Math.max(...parts));
  return parts.map((one, index) =>
    index === largest ? (one + PARTS - sum(parts)) / PARTS : one / PARTS,
  );
}

/**
 * Mean of the Dirichlet posterior whose prior is the old distribution, worth
 * `strength` visits: (strength · p + count) / (strength + n). Multinomial counts,
 * conjugate prior: Gelman et al., "Bayesian Data Analysis", section 3.4 (from memory).
 */
export function dirichlet(
  p: readonly number[],
  counts: readonly number[],
  strength: number,
): number[] {
  const total = strength * sum(p) + sum(counts);
  return p.map((one, index) => (strength * one + at(counts, index)) / total);
}

/** A change from counts; none when too few visits speak, or nothing moves. */
function change(
  paths: Change['paths'],
  before: readonly number[],
  counts: readonly number[],
  { strength, minimum }: LearnOptions,
): Change[] {
  const seen = sum(counts);
  if (seen < minimum || seen === 0) return [];
  const after = rounded(dirichlet(before, counts, strength));
  return after.every((one, index) => one === before[index]) ? [] : [{ paths, seen, before, after }];
}

/** The faults a row of a table speaks for; row −1 is the default. */
function faultsOf(table: TableFile, row: number, all: readonly string[]): readonly string[] {
  if (row >= 0) return at(table.rows, row).faults;
  const named = table.rows.flatMap(({ faults }) => faults);
  return all.filter((fault) => !named.includes(fault));
}

function tableChanges(
  [key, table]: readonly [string, TableFile],
  all: readonly string[],
  visits: readonly RecordedVisit[],
  options: LearnOptions,
): Change[] {
  return [-1, ...table.rows.keys()].flatMap((row) => {
    const faults = faultsOf(table, row, all);
    const { p } = row < 0 ? table.default : at(table.rows, row);
    const way = row < 0 ? ['evidence', key, 'default', 'p'] : ['evidence', key, 'rows', row, 'p'];
    const counts = table.answers.map(
      (answer) =>
        visits.filter((one) => faults.includes(one.fault) && one.answers[key] === answer).length,
    );
    const paths = p.map((_, index) => [...way, index]);
    return change(paths, p, counts, options);
  });
}

/**
 * What visits would change in the figures: the priors, and each row of each table
 * of answers. A row keeps speaking for all of its faults together. Checks stay as
 * they are, and so does what fewer than `minimum` visits speak for. Visits that
 * found something else count for nothing.
 *
 * Visits come from callers whose door stayed locked: the new figures speak for them.
 */
export function learn(
  file: FaultsFile,
  visits: readonly RecordedVisit[],
  options: LearnOptions,
): readonly Change[] {
  const names = Object.keys(file.faults);
  const known = visits.filter(({ fault }) => fault !== OTHER);
  const priors = change(
    names.map((name) => ['faults', name, 'prior']),
    Object.values(file.faults).map(({ prior }) => prior),
    names.map((name) => known.filter(({ fault }) => fault === name).length),
    options,
  );
  const tables = Object.entries(file.evidence);
  return [...priors, ...tables.flatMap((one) => tableChanges(one, names, known, options))];
}

/** The file with the changes made; the one given is left as it is. */
export function changed(file: FaultsFile, changes: readonly Change[]): FaultsFile {
  const next = structuredClone(file);
  for (const { paths, after } of changes)
    for (const [index, path] of paths.entries()) put(next, path, at(after, index));
  return next;
}

function put(target: unknown, path: readonly (string | number)[], value: number): void {
  const place = path
    .slice(0, -1)
    .reduce<unknown>((inside, key) => (inside as Record<string | number, unknown>)[key], target);
  (place as Record<string | number, unknown>)[path.at(-1) ?? ''] = value;
}
