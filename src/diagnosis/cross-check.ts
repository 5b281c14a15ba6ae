import type { Detail } from '../guide/details.ts';
import { depthFirst } from '../guide/loops.ts';
import type { Guide } from '../guide/types.ts';
import { resultRow } from './build-model.ts';
import { detailKey } from './evidence.ts';
import { sum } from './numbers.ts';
import { MOST_CHECKS } from './order.ts';
import type { Report } from './problem.ts';
import type { CheckFile, FaultsFile, TableFile } from './schema.ts';

/** What the evidence keys are checked against; left out, that check is left out. */
export interface Context {
  readonly guide?: Pick<Guide, 'nodes'> & Partial<Pick<Guide, 'id'>>;
  readonly details?: readonly Detail[];
}

/** Sets of faults are kept in the bits of one 32-bit integer. */
export const MOST_FAULTS = 31;
/** Sets of parts are enumerated. */
export const MOST_PARTS = 16;

/** Figures are written with a few decimals: three thirds as 0.333 are one within this. */
const ROUNDING = 0.002;

type Path = readonly PropertyKey[];

function names(
  list: readonly string[],
  known: Readonly<Record<string, unknown>>,
  path: Path,
  code: Parameters<Report>[1],
  report: Report,
): void {
  list.forEach((name, index) => {
    if (!Object.hasOwn(known, name)) report([...path, index], code, { name });
    if (list.indexOf(name) !== index) report([...path, index], 'twice', { name });
  });
}

function distribution(p: readonly number[], length: number, path: Path, report: Report): void {
  if (p.length !== length) report(path, 'row-length', { expected: length, found: p.length });
  const total = sum(p);
  if (Math.abs(total - 1) > ROUNDING) report(path, 'row-does-not-sum-to-one', { sum: total });
}

function rows(
  list: NonNullable<CheckFile['rows']>,
  length: number,
  file: FaultsFile,
  path: Path,
  report: Report,
): void {
  const seen = new Set<string>();
  list.forEach(({ faults, p }, index) => {
    names(faults, file.faults, [...path, index, 'faults'], 'unknown-fault', report);
    for (const name of faults) {
      if (seen.has(name)) report([...path, index, 'faults'], 'twice', { name });
      seen.add(name);
    }
    distribution(p, length, [...path, index, 'p'], report);
  });
}

/** Every evidence key with its answers, as the guide and the details have them. */
function keysOf({ guide, details }: Context): Map<string, Set<string>> {
  const known = new Map<string, Set<string>>();
  for (const { sentences, answers } of guide?.nodes.values() ?? []) {
    const all = known.get(sentences) ?? new Set();
    for (const { id } of answers) all.add(id);
    known.set(sentences, all);
  }
  for (const { id, answers } of details ?? []) known.set(detailKey(id), new Set(answers));
  return known;
}

function evidence(
  [key, table]: readonly [string, TableFile],
  file: FaultsFile,
  context: Context,
  report: Report,
): void {
  const path = ['evidence', key];
  const known = keysOf(context).get(key);
  const checkable = key.startsWith(detailKey('')) ? context.details : context.guide;
  if (checkable && !known) report(path, 'unknown-evidence', { name: key });
  table.answers.forEach((name, index) => {
    const at = [...path, 'answers', index];
    if (checkable && known && !known.has(name)) report(at, 'unknown-answer', { name });
    if (name === 'unsure') report(at, 'unsure-is-no-evidence');
    if (table.answers.indexOf(name) !== index) report(at, 'twice', { name });
  });
  distribution(table.default.p, table.answers.length, [...path, 'default', 'p'], report);
  rows(table.rows, table.answers.length, file, [...path, 'rows'], report);
}

function safeReading(check: CheckFile): boolean {
  if (check.reading === 'resistance') return check['proved-dead'] && check['wires-off'];
  return check.reading === 'look' || !check['proved-dead'];
}

function check([id, one]: readonly [string, CheckFile], file: FaultsFile, report: Report): void {
  const path = ['checks', id];
  names(one.access, file.access, [...path, 'access'], 'unknown-access', report);
  names(one.after ?? [], file.checks, [...path, 'after'], 'unknown-check', report);
  if (one.condemns !== undefined && !Object.hasOwn(file.parts, one.condemns))
    report([...path, 'condemns'], 'unknown-part', { name: one.condemns });
  if (!safeReading(one)) report([...path, 'reading'], 'unsafe-reading');
  const clear = Object.values(one.results).filter((points) => points.length === 0).length;
  if (clear !== 1) report([...path, 'results'], 'not-one-clear-result', { found: clear });
  for (const [result, points] of Object.entries(one.results))
    names(points, file.faults, [...path, 'results', result], 'unknown-fault', report);
  rows(one.rows ?? [], Object.keys(one.results).length, file, [...path, 'rows'], report);
  for (const fault of Object.keys(file.faults))
    if (clear === 1 && resultRow(one, fault).some((p) => p <= 0))
      report([...path, 'catches'], 'no-room-for-clear-result', { fault });
}

/** Checks that wait for each other, directly or through others. */
function circles({ checks }: FaultsFile, report: Report): void {
  const { loops } = depthFirst(Object.keys(checks), (name) => checks[name]?.after ?? []);
  for (const name of new Set(loops.flat()))
    report(['checks', name, 'after'], 'checks-in-a-circle', { name });
}

function fixedOrder(file: FaultsFile, report: Report): void {
  const order = file['fixed-order'];
  names(order, file.checks, ['fixed-order'], 'unknown-check', report);
  order.forEach((name, index) => {
    for (const first of file.checks[name]?.after ?? [])
      if (!order.slice(0, index).includes(first))
        report(['fixed-order', index], 'fixed-order-breaks-after', { name });
  });
  for (const name of Object.keys(file.checks))
    if (!order.includes(name)) report(['fixed-order'], 'fixed-order-misses', { name });
}

function sizes(file: FaultsFile, report: Report): void {
  const limits = [
    ['faults', MOST_FAULTS, 'too-many-faults'],
    ['checks', MOST_CHECKS, 'too-many-checks'],
    ['parts', MOST_PARTS, 'too-many-parts'],
  ] as const;
  for (const [place, most, code] of limits) {
    const found = Object.keys(file[place]).length;
    if (found > most) report([place], code, { found });
  }
}

/** Reports everything that one part of a well-shaped file gets wrong about another. */
export function crossCheck(file: FaultsFile, context: Context, report: Report): void {
  const { id: own = file.guide } = context.guide ?? {};
  if (own !== file.guide) report(['guide'], 'wrong-guide', { name: file.guide, expected: own });
  sizes(file, report);
  const total = sum(Object.values(file.faults).map(({ prior }) => prior));
  if (Math.abs(total - 1) > ROUNDING)
    report(['faults'], 'priors-do-not-sum-to-one', { sum: total });
  const found = new Set(
    Object.values(file.checks).flatMap(({ results }) => Object.values(results).flat()),
  );
  for (const [name, { parts }] of Object.entries(file.faults)) {
    names(parts, file.parts, ['faults', name, 'parts'], 'unknown-part', report);
    if (!found.has(name)) report(['faults', name], 'fault-without-check', { name });
  }
  for (const entry of Object.entries(file.evidence)) evidence(entry, file, context, report);
  for (const entry of Object.entries(file.checks)) check(entry, file, report);
  circles(file, report);
  fixedOrder(file, report);
}
