/** English for the terminal: what is wrong with the whole of what was given, and what to do. */
import type { EntriesProblem } from '../route/entries.ts';

/** Where the bytes given are no text, or too many to look at. */
export const NO_TEXT =
  'This is not UTF-8, so names could come out wrong. In the spreadsheet choose "CSV UTF-8" and save it again.';
export const TOO_LONG =
  'This is too long to be a list of codes. Split it, or leave out long columns.';

export function tellEntries(problem: EntriesProblem): string {
  switch (problem.code) {
    case 'nothing':
      return 'There is no line with a code. Give codes one a line, or CSV with a column headed "code".';
    case 'too-many':
      return `${String(problem.given)} visits are more than the ${String(problem.most)} of a round. Split the list.`;
    case 'too-large':
      return `${String(problem.given)} characters are more than the ${String(problem.most)} looked at. Split the list, or leave out long columns.`;
    case 'quotes':
      return `In row ${String(problem.row)} a quotation mark opens and does not close where a cell ends. Mend that row.`;
  }
}
