import { defined } from '../defined.ts';
import { buildModel } from './build-model.ts';
import { COMPLAINT } from './evidence.ts';
import { at, scaled, sum } from './numbers.ts';
import type { ModelFile, RowFile, TableFile } from './schema.ts';
import type { Selection } from './selection.ts';
import { UNLISTED } from './visits-schema.ts';
import type { RecordedVisit } from './visits-schema.ts';

export interface LearnOptions {
  /** How many visits each old distribution is worth. */
  readonly strength: number;
  /** Fewer visits than this leave a distribution as it is. */
  readonly minimum: number;
  /** Which calls become visits, by the figures as they are. */
  readonly selection: Selection;
}

/** As usual: an old distribution is worth so many visits, and no fewer move one. Our own choice. */
export const USUAL = { strength: 200, minimum: 10 } as const;

/** What a distribution of the file is of. */
export type Subject =
  /** How often each fault is behind a call. */
  | { readonly kind: 'faults'; readonly faults: readonly string[] }
  /** What callers answer: with these faults, or those of no row; only after what is `given`. */
  | {
      readonly kind: 'answers';
      readonly key: string;
      readonly answers: readonly string[];
      readonly faults?: readonly string[];
      readonly given?: Readonly<Record<string, readonly string[]>>;
    };

/** One distribution of the authors' file with new figures. */
export interface Change {
  readonly subject: Subject;
  /** Where each figure stands in the file, in the order of `before` and `after`. */
  readonly paths: readonly (readonly (string | number)[])[];
  /** Visits that speak for it. */
  readonly seen: number;
  readonly before: readonly number[];
  readonly after: readonly number[];
}

/** Figures that move by less of themselves are only counted. */
export const TOLD = 0.05;

/** What a change moves: the figures worth telling, each by its place, and how many others. */
export function movesOf({ before, after }: Pick<Change, 'before' | 'after'>) {
  const moved = [...after.entries()]
    .map(([place, now]) => ({ place, old: at(before, place), now }))
    .filter(({ old, now }) => now !== old);
  const told = moved.filter(({ old, now }) => Math.abs(now - old) >= TOLD * old);
  return { told, small: moved.length - told.length };
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
  { subject, paths }: Pick<Change, 'subject' | 'paths'>,
  before: readonly number[],
  counts: readonly number[],
  { strength, minimum }: LearnOptions,
): Change[] {
  const seen = sum(counts);
  if (seen < minimum || seen === 0) return [];
  const after = rounded(dirichlet(before, counts, strength));
  return after.every((one, index) => one === before[index])
    ? []
    : [{ subject, paths, seen, before, after }];
}

/**
 * Whether hidden facts decide which row speaks: then no count of answers tells a row's own share,
 * and counting each answer by itself would undo that they are told of one thing.
 */
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
  // Whoever answered otherwise was seldom visited: among visits its answers are askew.
  if (hidden(table) || options.selection.deciding.includes(key)) return [];
  const answered = visits.filter(({ answers }) => answers[key] !== undefined);
  return [-1, ...table.rows.keys()].flatMap((row) => {
    const { p } = row < 0 ? table.default : at(table.rows, row);
    const way =
      row < 0 ? ['observations', key, 'default', 'p'] : ['observations', key, 'rows', row, 'p'];
    const own = answered.filter((visit) => rowFor(table, visit) === row);
    const counts = table.answers.map(
      (answer) => own.filter(({ answers }) => answers[key] === answer).length,
    );
    const { faults, given } = row < 0 ? {} : at(table.rows, row);
    const subject = { kind: 'answers', key, answers: table.answers } as const;
    const paths = p.map((_, index) => [...way, index]);
    return change(
      { subject: { ...subject, ...defined({ faults, given }) }, paths },
      p,
      counts,
      options,
    );
  });
}

/** The fault of the figures that stands for what is not listed. */
export function unlisted({ faults }: ModelFile): string | undefined {
  return Object.keys(faults).find((name) => faults[name]?.calls === undefined);
}

/** The visits whose fault the figures have; what is not listed or not found, where a fault stands for it. */
export function ofFigures(file: ModelFile, visits: readonly RecordedVisit[]): RecordedVisit[] {
  const rest = unlisted(file);
  return visits.flatMap((visit) => {
    if (!UNLISTED.includes(visit.fault)) return [visit];
    return rest === undefined ? [] : [{ ...visit, fault: rest }];
  });
}

/**
 * Priors from visits, each complaint g by itself: a visit tells of the faults only among those
 * that come as g and of whose calls some part v becomes a visit (`selection.ts`: by the guides
 * and the figures as they are). With e = P(f | g, visit) ∝ P(f) · P(g | f) · v(f, g) by the old
 * figures, worth `strength` visits, n visits of g and c of them with f, that part of a fault's
 * calls is multiplied by (strength · e + c) / ((strength + n) · e); other parts stay:
 *
 *   P′(f) ∝ P(f) · Σ_g P(g | f) · (strength · e + c) / ((strength + n) · e)
 *
 * With many visits P′(f | g) ∝ (c / n) / v(f, g): the share of the visits divided by the chance
 * that the fault leads to one. Else selection would count twice, in the prior and in the answers;
 * and taken over all visits alike, so would the complaint.
 */
function priorChanges(
  file: ModelFile,
  visits: readonly RecordedVisit[],
  { strength, minimum, selection }: LearnOptions,
): Change[] {
  const model = buildModel(file);
  const complaint = model.evidence.find(({ key }) => key === COMPLAINT);
  const names = Object.keys(file.faults);
  const factor = names.map(() => 1);
  let seen = 0;
  // A visit that names no complaint tells nothing of how its fault was chosen.
  for (const [guide, chances] of Object.entries(selection.visit)) {
    const own = visits.filter(({ answers }) => answers[COMPLAINT] === guide);
    const place = complaint?.answers.indexOf(guide) ?? -1;
    if (own.length < minimum || !complaint || place < 0) continue;
    seen += own.length;
    const parts = complaint.rowOf.map((row) => at(at(complaint.rows, row), place));
    const expected = scaled(
      model.faults.map(({ prior }, fault) => prior * at(parts, fault) * at(chances, fault)),
    );
    for (const [fault, name] of names.entries()) {
      const e = at(expected, fault);
      // No call with it becomes a visit: none is expected, and none tells of it.
      if (e === 0) continue;
      const count = own.filter((visit) => visit.fault === name).length;
      const ratio = (strength * e + count) / ((strength + own.length) * e);
      factor[fault] = at(factor, fault) + at(parts, fault) * (ratio - 1);
    }
  }
  if (seen === 0) return [];
  const before = Object.values(file.faults).map(({ prior }) => prior);
  const after = rounded(scaled(before.map((prior, fault) => prior * at(factor, fault))));
  const paths = names.map((name) => ['faults', name, 'prior']);
  return [{ subject: { kind: 'faults', faults: names }, paths, seen, before, after }];
}

/**
 * What visits would change in the figures: the priors, and each row of each table of answers
 * that hangs on no hidden fact and decides no visit. A row keeps speaking for all of its faults
 * together, one with a condition where it held; what is not listed answers like the average, so
 * its visits move its prior alone. Checks stay as they are, and so does what fewer than `minimum`
 * visits speak for.
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
