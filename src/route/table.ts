/** Tables for spreadsheets. */
import Papa from 'papaparse';

/**
 * What a spreadsheet could take for the start of a formula: OWASP, "CSV Injection", names = + - @,
 * tab, carriage return and line feed, and the full-width forms some programs take alike.
 */
const FORMULA = '[\\s"]*[=+\\-@\\uff0b\\uff0d\\uff1d\\uff20]';
const FIRST = new RegExp(`^(?:${FORMULA}|[\\t\\r\\n])`);
/** A program set to another separator than the comma parts cells there, quotes or not. */
const LATER = new RegExp(`([;|\\t\\r\\n])(?=${FORMULA})`, 'g');
/** What a terminal would obey. */
const CONTROL = /(?![\t\r\n])\p{Cc}/gu;

function guarded(cell: string): string {
  const text = cell.replace(CONTROL, '\ufffd').replace(LATER, "$1'");
  return FIRST.test(text) ? `'${text}` : text;
}

/**
 * Rows as CSV (RFC 4180, lines end in CRLF), every cell in quotes. What could be a formula gets an
 * apostrophe before it, as OWASP says, and so is shown as text.
 */
export function csvOf(rows: readonly (readonly string[])[]): string {
  const cells = rows.map((row) => row.map(guarded));
  return `${Papa.unparse(cells, { quotes: true })}\r\n`;
}

/** Columns carried along, but for those that the table has anew under the same heading. */
export function passthroughColumns(
  columns: readonly string[],
  own: readonly string[],
): { readonly name: string; readonly index: number }[] {
  return columns.map((name, index) => ({ name, index })).filter(({ name }) => !own.includes(name));
}
