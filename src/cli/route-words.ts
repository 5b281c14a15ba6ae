import type { EntriesProblem } from '../route/entries.ts';

/** English for the terminal: what is wrong with the whole of what was given, and what to do. */
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
