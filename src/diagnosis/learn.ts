import { buildModel } from './build-model.ts';
import { COMPLAINT, VISIT } from './evidence.ts';
import { at, scaled, sum } from './numbers.ts';
import { shares } from './posterior.ts';
import type { ModelFile, RowFile, TableFile } from './schema.ts';
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

/** Whether hidden facts decide which row speaks: then no count of answers tells a row's own share. */
const hidden = ({ about, rows }: TableFile) =>
  about !== undefined || rows.some((row) => row.if !== undefined);

/** The row that speaks for a visit; −1 is the default. */
function rowFor(table: TableFile, { fault, answers }: RecordedVisit): number {
  const holds = ({ faults, given }: RowFile) =>
    (faults?.includes(fault) ?? true) &&
    Object.entries(given ?? {}).every(([key, list]) => list.includes(answers[key] ?? ''));
  const ruled = table.rows.findIndex((row) => row.given !== undefined && holds(row));
  return ruled >= 0
    ? ruled
    : table.rows.findIndex((row) => row.given === undefined && row.faults?.includes(fault));
}

function tableChanges(
  [key, table]: readonly [string, TableFile],
  visits: readonly RecordedVisit[],
  options: LearnOptions,
): Change[] {
  if (hidden(table)) return [];
  const answered = visits.filter(({ answers }) => answers[key] !== undefined);
  return [-1, ...table.rows.keys()].flatMap((row) => {
    const { p } = row < 0 ? table.default : at(table.rows, row);
    const way =
      row < 0 ? ['observations', key, 'default', 'p'] : ['observations', key, 'rows', row, 'p'];
    const own = answered.filter((visit) => rowFor(table, visit) === row);
    const counts = table.answers.map(
      (answer) => own.filter(({ answers }) => answers[key] === answer).length,
    );
    const paths = p.map((_, index) => [...way, index]);
    return change(paths, p, counts, options);
  });
}

/** The fault of the figures that stands for what is not listed. */
export function unlisted({ faults }: ModelFile): string | undefined {
  return Object.keys(faults).find((name) => faults[name]?.calls === undefined);
}

/** The visits whose fault the figures have; what is not listed, where a fault stands for it. */
export function ofFigures(file: ModelFile, visits: readonly RecordedVisit[]): RecordedVisit[] {
  const rest = unlisted(file);
  return visits.flatMap((visit) => {
    if (visit.fault !== OTHER) return [visit];
    return rest === undefined ? [] : [{ ...visit, fault: rest }];
  });
}

/**
 * Priors from visits, each complaint by itself: a visit tells of the faults only among those that
 * come as its complaint g and have not passed by then. With e = P(f | g, visit needed) by the old
 * figures, worth `strength` visits, n visits of g and c of them with f, that part of a fault's
 * calls is multiplied by (strength · e + c) / ((strength + n) · e); other parts stay:
 *
 *   P′(f) ∝ P(f) · Σ_g P(g | f) · (strength · e + c) / ((strength + n) · e)
 *
 * Taken over all visits alike, the complaint would count twice, in the prior and as an answer.
 */
function priorChanges(
  file: ModelFile,
  visits: readonly RecordedVisit[],
  { strength, minimum }: LearnOptions,
): Change[] {
  const model = buildModel(file);
  const complaint = model.evidence.find(({ key }) => key === COMPLAINT);
  const names = Object.keys(file.faults);
  const factor = names.map(() => 1);
  let seen = 0;
  // Visits without one tell of all faults.
  for (const guide of new Set(visits.map(({ answers }) => answers[COMPLAINT]))) {
    const own = visits.filter(({ answers }) => answers[COMPLAINT] === guide);
    if (own.length < minimum) continue;
    seen += own.length;
    const told = guide === undefined ? [] : [{ key: COMPLAINT, answer: guide }];
    const expected = shares(model, [...told, { key: VISIT, answer: 'needed' }]);
    const place = complaint?.answers.indexOf(guide ?? '') ?? -1;
    for (const [fault, name] of names.entries()) {
      const part =
        place < 0 || !complaint ? 1 : at(at(complaint.rows, at(complaint.rowOf, fault)), place);
      const count = own.filter((visit) => visit.fault === name).length;
      const ratio =
        (strength * at(expected, fault) + count) / ((strength + own.length) * at(expected, fault));
      factor[fault] = at(factor, fault) + part * (ratio - 1);
    }
  }
  if (seen === 0) return [];
  const before = Object.values(file.faults).map(({ prior }) => prior);
  const after = rounded(scaled(before.map((prior, fault) => prior * at(factor, fault))));
  return [{ paths: names.map((name) => ['faults', name, 'prior']), seen, before, after }];
}

/**
 * What visits would change in the figures: the priors, and each row of each table of answers
 * that hangs on no hidden fact. A row keeps speaking for all of its faults together; what is not
 * listed answers like the average, so its visits move its prior alone. Checks stay as they are,
 * and so does what fewer than `minimum` visits speak for.
 *
 * Visits come from callers whom no guide helped: the new figures speak for them.
 */
export function learn(
  file: ModelFile,
  visits: readonly RecordedVisit[],
  options: LearnOptions,
): readonly Change[] {
  const known = ofFigures(file, visits);
  const priors = priorChanges(file, known, options);
  const listed = known.filter(({ fault }) => fault !== unlisted(file));
  const tables = Object.entries(file.observations);
  return [...priors, ...tables.flatMap((one) => tableChanges(one, listed, options))];
}

/** The file with the changes made; the one given is left as it is. */
export function changed(file: ModelFile, changes: readonly Change[]): ModelFile {
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
