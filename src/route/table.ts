/** Tables for spreadsheets. */
import Papa from 'papaparse';

/**
 * Cells that a spreadsheet could take for a formula: OWASP, "CSV Injection", names = + - @, tab,
 * carriage return and line feed at the start, and the full-width forms some programs take alike.
 */
const FORMULA = /^[=+\-@\t\r\n\uff0b\uff0d\uff1d\uff20]/;

/**
 * Rows as CSV (RFC 4180, lines end in CRLF). What could be a formula gets an apostrophe before it,
 * as OWASP says, and so is shown as text.
 */
export function csvOf(rows: readonly (readonly string[])[]): string {
  return `${Papa.unparse(rows as string[][], { escapeFormulae: FORMULA })}\r\n`;
}

/** Columns carried along, but for those that the table has anew under the same heading. */
export function passthroughColumns(
  columns: readonly string[],
  own: readonly string[],
): { readonly name: string; readonly index: number }[] {
  return columns.map((name, index) => ({ name, index })).filter(({ name }) => !own.includes(name));
}
