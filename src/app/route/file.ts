/** The route as a table for people. */
import type { PartsToBring } from '../../route/parts-to-bring.ts';
import { passthroughColumns, csvOf } from '../../route/table.ts';
import { problemWords } from '../preview/sentences.ts';
import { told } from './facts.ts';
import type { Page } from './page.ts';
import type { Line, RouteState } from './state.ts';

const HEADINGS = [
  ...['code', 'urgency', 'expected', 'cautious', 'faults', 'parts', 'flags', 'problem'],
] as const;

/** The visits in their order, then the lines still to mend, each with the columns it came with. */
export function routeTable(
  page: Page,
  { visits, unread, columns }: Pick<RouteState, 'visits' | 'unread' | 'columns'>,
  load: PartsToBring,
): string {
  const headings = HEADINGS.map((heading) => page.words.t(`round:csv.${heading}`));
  const passed = passthroughColumns(columns(), headings);
  const rest = (others: readonly string[]) => passed.map(({ index }) => others[index] ?? '');
  const why = ({ reading }: Line) =>
    reading.kind === 'refused' ? problemWords(page.words, reading.problem).what : reading.code;
  return csvOf([
    [...headings, ...passed.map(({ name }) => name)],
    ...visits().map((visit) => {
      const { urgency, faults, parts, flags } = told(page, visit, load);
      const { assessed } = visit;
      return [
        ...[visit.code ?? '', urgency],
        ...(assessed
          ? [String(Math.round(assessed.expected)), String(assessed.cautious)]
          : ['', '']),
        ...[faults, parts, flags].map((list) => list.join('; ')),
        ...['', ...rest(visit.others)],
      ];
    }),
    ...unread().map((line) => [
      ...[line.text, '', '', '', '', '', '', why(line)],
      ...rest(line.others),
    ]),
  ]);
}
