import type { Detail } from '../guide/details.ts';
import { ownNodes } from '../guide/ids.ts';
import { depthFirst } from '../guide/loops.ts';
import type { Guide } from '../guide/types.ts';
import { resultRow } from './build-model.ts';
import { COMPLAINT, KIND, detailKey } from './evidence.ts';
import { sum } from './numbers.ts';
import type { Report } from './problem.ts';
import type { CheckFile, ModelFile, RowFile, TableFile } from './schema.ts';

/** What the evidence keys are checked against; left out, that check is left out. */
export interface Context {
  readonly guides?: readonly Guide[];
  readonly details?: readonly Detail[];
}

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
  list: readonly Pick<RowFile, 'faults' | 'p'>[],
  length: number,
  file: ModelFile,
  path: Path,
  report: Report,
): void {
  list.forEach(({ faults = [], p }, index) => {
    names(faults, file.faults, [...path, index, 'faults'], 'unknown-fault', report);
    distribution(p, length, [...path, index, 'p'], report);
  });
}

/** Of rows that no condition tells apart the later would never speak for the same fault. */
function once(list: readonly RowFile[], path: Path, report: Report): void {
  const seen = new Set<string>();
  list.forEach(({ faults = [''], is, if: facts, given }, index) => {
    for (const name of faults) {
      const same = JSON.stringify([name, is, facts, given]);
      if (seen.has(same)) report([...path, index, 'faults'], 'twice', { name });
      seen.add(same);
    }
  });
}

type Keys = ReadonlyMap<string, ReadonlySet<string>>;

/**
 * Every evidence key with its answers, as guides and details have them. A page goes by its guide
 * and name; by its name alone where a block has it, or no other guide a page of that name.
 */
function keysOf({ guides = [], details = [] }: Context): Keys {
  const known = new Map<string, Set<string>>();
  const add = (key: string, answers: Iterable<string>): void => {
    known.set(key, new Set([...(known.get(key) ?? []), ...answers]));
  };
  const own = new Map<string, Set<string>>();
  const pages = guides.flatMap((guide) => ownNodes(guide).map((node) => ({ guide, node })));
  for (const { guide, node } of pages)
    if (node.block === undefined)
      own.set(node.sentences, new Set([...(own.get(node.sentences) ?? []), guide.id]));
  for (const { guide, node } of pages) {
    const answers = node.answers.map(({ id }) => id);
    add(`${guide.id}/${node.sentences}`, answers);
    if ((own.get(node.sentences)?.size ?? 0) < 2) add(node.sentences, answers);
  }
  for (const { id, answers } of details) add(detailKey(id), answers);
  add(
    COMPLAINT,
    guides.map(({ id }) => id),
  );
  return known;
}

function conditions(
  { is, if: facts = {}, given = {} }: RowFile,
  about: string | undefined,
  file: ModelFile,
  keys: Keys,
  path: Path,
  report: Report,
): void {
  if (is && about === undefined) report([...path, 'is'], 'is-about-nothing');
  const named = [
    ...Object.entries(facts),
    ...(is && about !== undefined ? [[about, is] as const] : []),
  ];
  for (const [name, values] of named) {
    const known = file.facts[name]?.values;
    if (!known) report(path, 'unknown-fact', { name });
    for (const value of values)
      if (known && !known.includes(value)) report(path, 'unknown-value', { name: value });
  }
  givenAnswers(given, keys, [...path, 'given'], report);
}

/** Answers of other pages or details, each of which has them. */
function givenAnswers(
  given: Readonly<Record<string, readonly string[]>>,
  keys: Keys,
  path: Path,
  report: Report,
): void {
  for (const [name, answers] of Object.entries(given)) {
    const known = keys.get(name);
    if (keys.size > 0 && !known) report([...path, name], 'unknown-evidence', { name });
    for (const answer of answers)
      if (known && !known.has(answer)) report([...path, name], 'unknown-answer', { name: answer });
  }
}

function evidence(
  [key, table]: readonly [string, TableFile],
  file: ModelFile,
  keys: Keys,
  context: Context,
  report: Report,
): void {
  const path = ['observations', key];
  const known = keys.get(key);
  const checkable = key.startsWith(detailKey('')) ? context.details : context.guides;
  if (checkable && !known) report(path, 'unknown-evidence', { name: key });
  table.answers.forEach((name, index) => {
    const at = [...path, 'answers', index];
    if (checkable && known && !known.has(name)) report(at, 'unknown-answer', { name });
    if (name === 'unsure') report(at, 'unsure-is-no-evidence');
    if (table.answers.indexOf(name) !== index) report(at, 'twice', { name });
  });
  for (const [answer, over] of Object.entries(table.supersedes ?? {})) {
    const place = [...path, 'supersedes', answer];
    if (!table.answers.includes(answer)) report(place, 'unknown-answer', { name: answer });
    names(over, file.observations, place, 'unknown-evidence', report);
  }
  givenAnswers(table.told ?? {}, keys, [...path, 'told'], report);
  for (const [page, answers] of Object.entries(table.tells ?? {})) {
    givenAnswers({ [page]: Object.keys(answers) }, keys, [...path, 'tells'], report);
    const own = Object.fromEntries(table.answers.map((answer) => [answer, true]));
    const told = [...new Set(Object.values(answers))];
    names(told, own, [...path, 'tells', page], 'unknown-answer', report);
  }
  distribution(table.default.p, table.answers.length, [...path, 'default', 'p'], report);
  rows(table.rows, table.answers.length, file, [...path, 'rows'], report);
  once(table.rows, [...path, 'rows'], report);
  table.rows.forEach((row, index) => {
    const { faults, is, if: facts, given } = row;
    const at = [...path, 'rows', index];
    if (!faults && !is && !facts && !given) report(at, 'row-of-nothing');
    conditions(row, table.about, file, keys, at, report);
  });
}

function safeReading(check: CheckFile): boolean {
  if (check.reading === 'resistance') return check['proved-dead'] && check['wires-off'];
  return check.reading === 'look' || !check['proved-dead'];
}

function check([id, one]: readonly [string, CheckFile], file: ModelFile, report: Report): void {
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
  once(one.rows ?? [], [...path, 'rows'], report);
  for (const fault of Object.keys(file.faults))
    if (clear === 1 && resultRow(one, fault).some((p) => p <= 0))
      report([...path, 'catches'], 'no-room-for-clear-result', { fault });
}

/** Checks that wait for each other, directly or through others. */
function circles({ checks }: ModelFile, report: Report): void {
  const { loops } = depthFirst(Object.keys(checks), (name) => checks[name]?.after ?? []);
  for (const name of new Set(loops.flat()))
    report(['checks', name, 'after'], 'checks-in-a-circle', { name });
}

/** The order of the file is the usual one: each check behind those it waits for. */
function usualOrder({ checks }: ModelFile, report: Report): void {
  const order = Object.keys(checks);
  order.forEach((name, index) => {
    for (const first of checks[name]?.after ?? [])
      if (order.indexOf(first) > index)
        report(['checks', name, 'after'], 'order-breaks-after', { name });
  });
}

/** Reports everything that one part of a well-shaped file gets wrong about another. */
export function crossCheck(file: ModelFile, context: Context, report: Report): void {
  const total = sum(Object.values(file.faults).map(({ prior }) => prior));
  if (Math.abs(total - 1) > ROUNDING)
    report(['faults'], 'priors-do-not-sum-to-one', { sum: total });
  const found = new Set(
    Object.values(file.checks).flatMap(({ results }) => Object.values(results).flat()),
  );
  const guides = Object.fromEntries((context.guides ?? []).map(({ id }) => [id, true]));
  for (const [name, { parts, calls }] of Object.entries(file.faults)) {
    names(parts, file.parts, ['faults', name, 'parts'], 'unknown-part', report);
    // What stands for all that is not listed is found by nothing that is.
    if (calls && !found.has(name)) report(['faults', name], 'fault-without-check', { name });
    if (context.guides)
      names(Object.keys(calls ?? {}), guides, ['faults', name, 'calls'], 'unknown-guide', report);
  }
  const placed = Object.values(file.places).flat();
  names(placed, file.faults, ['places'], 'unknown-fault', report);
  const kinds = context.details?.find(({ id }) => id === KIND)?.answers;
  for (const [name, { kinds: own = {}, instead = {}, after = [] }] of Object.entries(file.access)) {
    const others = [...new Set(Object.values(instead)), ...after];
    names(others, file.access, ['access', name], 'unknown-access', report);
    for (const kind of [...Object.keys(own), ...Object.keys(instead)])
      if (kinds && !kinds.some((one) => one === kind))
        report(['access', name], 'unknown-answer', { name: kind });
  }
  for (const [name, { covers = [] }] of Object.entries(file.parts))
    names(covers, file.parts, ['parts', name, 'covers'], 'unknown-part', report);
  for (const [name, { values, default: first, rows: list }] of Object.entries(file.facts)) {
    distribution(first.p, values.length, ['facts', name, 'default', 'p'], report);
    rows(list, values.length, file, ['facts', name, 'rows'], report);
    once(list, ['facts', name, 'rows'], report);
  }
  const keys = keysOf(context);
  for (const entry of Object.entries(file.observations))
    evidence(entry, file, keys, context, report);
  for (const entry of Object.entries(file.checks)) check(entry, file, report);
  circles(file, report);
  usualOrder(file, report);
}
