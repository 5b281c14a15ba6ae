/** A day's route at a terminal: text in, one JSON object or a table out. */
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { makeAssess } from '../visit/assess.ts';
import { entriesOf } from '../route/entries.ts';
import { isUncoded } from '../route/limits.ts';
import type { EntriesProblem } from '../route/entries.ts';
import type { Figures } from '../visit/read-visit.ts';
import { routeJson } from '../route/json.ts';
import type { RouteJson } from '../route/json.ts';
import { csvOf, passthroughColumns } from '../route/table.ts';
import type { Route, Unread, PlannedVisit } from '../route/types.ts';
import { readPasted } from '../visit/hand-over.ts';
import { jobLabels } from '../app/shared/job-text.ts';
import { staffWords } from './words.ts';
import { byUrgency, readVisit } from '../visit/read-visit.ts';
import { models, staffViews } from '../content/load.ts';
import type { CurrentCodebooks } from '../content/codebooks.ts';

/** What is known of the guides besides their codebooks, from this copy's files. */
export function loadFigures(): Figures {
  return { models: models(), staffViews: staffViews() };
}

/** A day's route of a text, sorted by urgency. Repaired codes stay among the unread ones. */
export function makeRoute(
  text: string,
  { codebooks }: CurrentCodebooks,
  figures: Figures,
): Result<Route, EntriesProblem> {
  const labels = jobLabels(staffWords());
  const found = entriesOf(text, codebooks, labels);
  if (!found.ok) return found;
  const { columns, entries } = found.value;
  const assess = makeAssess();
  const visits: PlannedVisit[] = [];
  const unread: Unread[] = [];
  for (const { row, text: given, others } of entries) {
    if (isUncoded(given, labels)) {
      visits.push({ row, others, code: undefined, seen: undefined, assessed: undefined });
      continue;
    }
    const reading = readPasted(given, codebooks, labels).reading;
    if (reading.kind !== 'exact') {
      unread.push({ row, others, text: given, reading });
      continue;
    }
    const seen = readVisit(reading.note, codebooks, figures);
    visits.push({ row, others, code: reading.code, seen, assessed: assess(seen) });
  }
  return ok({ columns, visits: byUrgency(visits), unread });
}

const HEADINGS = [
  ...['code', 'urgency', 'expected-minutes', 'cautious-minutes', 'faults', 'parts', 'flags'],
  'problem',
] as const;
/** Faults named in a table's cell. */
const NAMED = 3;

/** A route as CSV, names as in the JSON; the lines that could not be read come last. */
export function routeCsv({ visits, unread }: RouteJson, route: Route): string {
  const passed = passthroughColumns(route.columns, HEADINGS);
  // By their place: an object puts keys that are numbers first, and two columns may be headed alike.
  const rest = (of: { readonly others: readonly string[] } | undefined) =>
    passed.map(({ index }) => of?.others[index] ?? '');
  return csvOf([
    [...HEADINGS, ...passed.map(({ name }) => name)],
    ...visits.map(({ code, urgency, figures, flags }, place) => [
      ...[code ?? '', urgency],
      figures ? String(Math.round(figures.minutes.expected)) : '',
      figures ? String(figures.minutes.cautious) : '',
      (figures?.faults ?? [])
        .slice(0, NAMED)
        .map(({ fault }) => fault)
        .join('; '),
      (figures?.load ?? []).join('; '),
      flags.join('; '),
      ...['', ...rest(route.visits[place])],
    ]),
    ...unread.map(({ text, problem, proposal }, place) => [
      ...[text, '', '', '', '', '', ''],
      problem?.code ?? `proposal ${proposal?.code ?? ''}`,
      ...rest(route.unread[place]),
    ]),
  ]);
}

/**
 * What is printed for a text, and whether all of it was usable.
 * @param csv a table in place of JSON
 */
export function routeOutput(
  text: string,
  current: CurrentCodebooks,
  today: Date,
  csv: boolean,
): Result<{ readonly text: string; readonly good: boolean }, EntriesProblem> {
  const route = makeRoute(text, current, loadFigures());
  if (!route.ok) return fail(route.error);
  const json = routeJson(route.value, today);
  return ok({
    text: csv ? routeCsv(json, route.value).trimEnd() : JSON.stringify(json),
    good: route.value.unread.length === 0,
  });
}
