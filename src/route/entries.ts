/**
 * What was pasted or dropped, as entries: one code a line, or a table with a code column. Tables
 * are read by Papa Parse (RFC 4180 and its common relatives: comma, semicolon or tab).
 */
import Papa from 'papaparse';
import type { Codebooks } from '../note/codebook.ts';
import { fail, ok, type Result } from '../result.ts';
import { readCode } from '../note/read.ts';
import { codesIn, jobsIn, readPasted, type HandOver, type Labels } from '../visit/hand-over.ts';
import { callerFields } from '../visit/job.ts';
import { knownColumns } from './known.ts';
import { MOST_CHARACTERS, MOST_VISITS } from './limits.ts';

export { MOST_CHARACTERS, MOST_VISITS };

export interface Entry {
  /** The row it stands in, from 1; in a table a row may run over several lines. */
  readonly row: number;
  /** The code as given. */
  readonly text: string;
  /** The other columns' cells. */
  readonly others: readonly string[];
}

export interface Entries {
  /** Headings of the other columns; their numbers, from 1, where the table has no headings. */
  readonly columns: readonly string[];
  /** Heading or number of the column taken for the codes; undefined for lines. */
  readonly codes: string | undefined;
  readonly entries: readonly Entry[];
}

export type EntriesProblem =
  | { readonly code: 'nothing' }
  | { readonly code: 'too-many'; readonly given: number; readonly most: number }
  | { readonly code: 'too-large'; readonly given: number; readonly most: number }
  /** A quotation mark that is never closed, or closed in the middle of a cell. */
  | { readonly code: 'quotes'; readonly row: number };

type Row = readonly string[];
interface Table {
  readonly column: number;
  /** Whether its first row has headings. */
  readonly headings: boolean;
}

/** The heading of our own tables; any other is known by its cells. */
const HEADING = 'code';
/** What may divide a table's cells. */
const SIGNS = [',', ';', '\t'] as const;
/** Rows looked at to find the column. */
const SAMPLE = 20;
/** Wider is no list of visits: its lines are then listed as they are. */
export const MOST_COLUMNS = 256;

const blank = (row: Row): boolean => row.every((cell) => cell.trim() === '');
/** Cells of the longest row. Not by spreading: a text may have more rows than a call takes arguments. */
const widest = (rows: readonly Row[]): number =>
  rows.reduce((most, { length }) => Math.max(most, length), 0);
const reads = (text: string | undefined, codebooks: Codebooks, labels: Labels): boolean =>
  text !== undefined && readPasted(text, codebooks, labels).reading.kind !== 'refused';

/** The code column of some rows, and how sure that is: headed so, or how many of its cells read. */
function tableIn(
  rows: readonly Row[],
  codebooks: Codebooks,
  labels: Labels,
): (Table & { sure: number }) | undefined {
  if (widest(rows) > MOST_COLUMNS) return undefined;
  const sample = rows.filter((row) => !blank(row)).slice(0, SAMPLE);
  const first = sample[0] ?? [];
  const headed = first.findIndex((cell) => cell.trim().toLowerCase() === HEADING);
  if (headed >= 0) return { column: headed, headings: true, sure: Infinity };
  const width = widest(sample);
  if (width < 2) return undefined;
  const known = knownColumns(first, labels).size;
  const readable = Array.from(
    { length: width },
    (_, column) => sample.filter((row) => reads(row[column], codebooks, labels)).length,
  );
  const sure = Math.max(...readable);
  // Two headings of a schedule make one of visits that all have no code yet.
  if (sure === 0) return known < 2 ? undefined : { column: -1, headings: true, sure: known / 100 };
  const column = readable.indexOf(sure);
  // Headings hold no digit where the codes stand; a damaged code in the first row nearly always
  // does (without one: 22 of 32 characters, 16 times over, 1 in 400), and shows as taken.
  const head = first[column] ?? '';
  return { column, headings: !reads(head, codebooks, labels) && !/\d/.test(head), sure };
}

const parse = (text: string, delimiter: string, preview = 0) =>
  Papa.parse<string[]>(text, { delimiter, newline: '\n', preview });

/** How a text is divided into a table, where it is one. */
function dividedBy(
  text: string,
  codebooks: Codebooks,
  labels: Labels,
): (Table & { sign: string }) | undefined {
  return SIGNS.flatMap((sign) => {
    const table = tableIn(parse(text, sign, 2 * SAMPLE).data, codebooks, labels);
    return table ? [{ ...table, sign }] : [];
  }).sort((a, b) => b.sure - a.sure)[0];
}

function ofTable(rows: readonly Row[], { column, headings: headed }: Table): Entries {
  const headings = headed ? rows.find((row) => !blank(row)) : undefined;
  const width = widest(rows);
  const others = Array.from({ length: width }, (_, index) => index).filter((i) => i !== column);
  const named = (index: number): string => {
    const heading = headings?.[index]?.trim() ?? '';
    return heading === '' ? String(index + 1) : heading;
  };
  return {
    columns: others.map(named),
    codes: column < 0 ? undefined : named(column),
    entries: rows.flatMap((cells, index) =>
      cells === headings || blank(cells)
        ? []
        : [
            {
              row: index + 1,
              text: cells[column] ?? '',
              others: others.map((other) => cells[other] ?? ''),
            },
          ],
    ),
  };
}

function ofLines(text: string): Entries {
  return {
    columns: [],
    codes: undefined,
    entries: text.split('\n').flatMap((line, index) => {
      const code = line.trim();
      return code === '' ? [] : [{ row: index + 1, text: code, others: [] }];
    }),
  };
}

/** Jobs as a table of what is known of each caller; and codes on lines of their own beside them. */
function ofJobs(
  jobs: readonly HandOver[],
  text: string,
  codebooks: Codebooks,
  labels: Labels,
): Entries {
  const lines = [...callerFields, 'called' as const, 'job' as const];
  const cell = ({ caller, called, job }: HandOver, line: (typeof lines)[number]): string =>
    (line === 'job' ? job : line === 'called' ? called : caller[line]) ?? '';
  const told = lines.filter((line) => jobs.some((job) => cell(job, line) !== ''));
  const known = new Set(jobs.map(({ code }) => code));
  const beside = text.split('\n').flatMap((line) => {
    const reading = readCode(line.trim(), codebooks);
    return reading.kind === 'exact' && !known.has(reading.code) ? [reading.code] : [];
  });
  const entries = [...jobs, ...beside.map((code): HandOver => ({ code, caller: {} }))];
  return {
    columns: told.map((line) => labels[line]),
    codes: undefined,
    entries: entries.map((job, index) => ({
      row: index + 1,
      text: job.code,
      others: told.map((line) => cell(job, line)),
    })),
  };
}

/**
 * Take a text apart: jobs as they are handed over, a table, or lines; nothing in it is left out
 * without a word. `codebooks` tell codes from other columns. @param room how many visits there is still room for
 */
export function entriesOf(
  given: string,
  codebooks: Codebooks,
  labels: Labels,
  room: number = MOST_VISITS,
): Result<Entries, EntriesProblem> {
  // One kind of line end: Papa Parse takes one for the whole text.
  const text = given.replace(/^\ufeff/, '').replace(/\r\n?/g, '\n');
  if (text.length > MOST_CHARACTERS)
    return fail({ code: 'too-large', given: text.length, most: MOST_CHARACTERS });
  const jobs = jobsIn(text, labels);
  const table = jobs.length > 0 ? undefined : dividedBy(text, codebooks, labels);
  const { data, errors } = table ? parse(text, table.sign) : { data: [], errors: [] };
  const quotes = errors.find(({ type }) => type === 'Quotes');
  if (quotes) return fail({ code: 'quotes', row: (quotes.row ?? 0) + 1 });
  const found =
    jobs.length > 0
      ? ofJobs(jobs, text, codebooks, labels)
      : table && widest(data) <= MOST_COLUMNS
        ? ofTable(data, table)
        : ofLines(text);
  // Two problems of one visit are two entries of one caller.
  const entries = found.entries.flatMap((one) =>
    codesIn(one.text).map((code) => ({ ...one, text: code })),
  );
  const count = entries.length;
  if (count === 0) return fail({ code: 'nothing' });
  return count > room
    ? fail({ code: 'too-many', given: count, most: room })
    : ok({ ...found, entries });
}
