/** A route as plain data for other programs: `public/schema/round.json`. */
import { latestDay } from '../note/day.ts';
import { CAUTIOUS, type Assessed } from '../visit/assess.ts';
import { partsToBring, type PartsToBring } from './parts-to-bring.ts';
import { totalOf } from './total.ts';
import type { Reading } from '../note/types.ts';
import type { Route, Unread, PlannedVisit } from './types.ts';

/** Chances as figures that can be read: six decimals. */
const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;

function figuresOf(assessed: Assessed, { own }: PartsToBring) {
  const { ranking, parts, expected, cautious, leftOver } = assessed;
  return {
    faults: ranking.map(({ fault, share }) => ({ fault, share: rounded(share) })),
    parts: parts.map(({ part, chance }) => ({ part, chance: rounded(chance) })),
    load: [...(own.get(assessed) ?? [])],
    minutes: { expected: rounded(expected), cautious, leftOver: rounded(leftOver) },
  };
}

/** The columns carried along; where two have one heading the later is told apart by its number. */
function passthrough(
  columns: readonly string[],
  others: readonly string[],
): Record<string, string> {
  const named = new Map<string, string>();
  for (const [index, name] of columns.entries()) {
    let own = name;
    while (named.has(own)) own = `${own} (${String(index + 1)})`;
    named.set(own, others[index] ?? '');
  }
  return Object.fromEntries(named);
}

function visitOf(
  { row, others, code, seen, assessed }: PlannedVisit,
  columns: Route['columns'],
  load: PartsToBring,
  today: Date,
) {
  const rest = passthrough(columns, others);
  if (!code || !seen)
    return {
      ...{ row, code: null, guide: null, release: null, made: null, urgency: 'open' as const },
      ...{ at: null, because: [], danger: [], flags: [], ranked: null, figures: null },
      columns: rest,
    };
  const { note, last, urgency, because, danger, flags, end } = seen;
  return {
    row,
    code,
    guide: note.guide,
    release: note.release,
    made: latestDay(note.day, today),
    urgency,
    at: end.id as string,
    because: because ? [because.node.id as string, because.edge.id as string] : [],
    danger: danger ? [danger.node.id as string, danger.edge.id as string] : [],
    flags: [...flags],
    ranked: last,
    figures: assessed ? figuresOf(assessed, load) : null,
    columns: rest,
  };
}

/** A proposed code without its note, which is not the caller's until one confirms it. */
function proposalOf({ kind: _kind, note: _note, ...rest }: Extract<Reading, { kind: 'repaired' }>) {
  return rest;
}

function unreadOf({ row, others, text, reading }: Unread, columns: Route['columns']) {
  const what =
    reading.kind === 'refused' ? { problem: reading.problem } : { proposal: proposalOf(reading) };
  return { row, text, ...what, columns: passthrough(columns, others) };
}

export function routeJson({ columns, visits, unread }: Route, today: Date) {
  const figures = visits.flatMap(({ assessed }) => assessed ?? []);
  const load = partsToBring(figures);
  return {
    version: 2 as const,
    quantile: CAUTIOUS,
    visits: visits.map((visit) => visitOf(visit, columns, load, today)),
    unread: unread.map((one) => unreadOf(one, columns)),
    total: {
      ...totalOf(figures),
      withoutFigures: visits.length - figures.length,
    },
    load: {
      stock: load.stock.map((one) => ({ ...one, mean: rounded(one.mean) })),
      chance: rounded(load.chance),
    },
  };
}

export type RouteJson = ReturnType<typeof routeJson>;
