/**
 * The route through a reload, in the tab's session storage. Codes say nothing of a person and are
 * kept always; what a list says beside them is caller data, kept only where the firm has said so
 * (`desk: keep-caller: tab` in `content/firm.yaml`).
 */
import { isRecord } from '../../guide/shape.ts';
import { plainSymbols } from '../../note/typed.ts';
import type { Entries } from '../../route/entries.ts';
import { MOST_CHARACTERS, MOST_VISITS } from '../../route/limits.ts';
import { tryStorage } from '../shared/storage.ts';
import type { KeepCaller } from '../desk/page.ts';

const KEY = 'hobnote.route';

export interface Stored extends Pick<Entries, 'columns' | 'entries'> {
  readonly order: 'urgency' | 'time' | 'hand';
  /** Something was left out: the cells, visits without a code, lines that are no code. */
  readonly lost: boolean;
}

const textsIn = (value: unknown): string[] =>
  Array.isArray(value) ? value.filter((one) => typeof one === 'string') : [];

/** What storage holds is looked at as if a stranger had written it. */
function parse(text: string): Stored | undefined {
  if (text.length > 2 * MOST_CHARACTERS) return undefined;
  const value: unknown = JSON.parse(text);
  if (!isRecord(value) || !Array.isArray(value['entries'])) return undefined;
  const entries = value['entries'].slice(0, MOST_VISITS).filter(isRecord);
  const order = value['order'] === 'time' || value['order'] === 'hand' ? value['order'] : 'urgency';
  return {
    columns: textsIn(value['columns']),
    entries: entries.map(({ row, text: code, others }, index) => ({
      row: typeof row === 'number' && row >= 1 ? Math.floor(row) : index + 1,
      text: typeof code === 'string' ? code : '',
      others: textsIn(others),
    })),
    order,
    lost: value['lost'] === true,
  };
}

/** Of a route what may lie in storage where callers' data may not. */
function codesOnly({ columns, entries, order, lost: before }: Stored): Stored {
  // A line that is no code may be a name.
  const kept = entries.filter(({ text }) => text !== '' && plainSymbols(text).ok);
  const lost =
    before ||
    kept.length < entries.length ||
    entries.some(({ others }) => others.some((cell) => cell.trim() !== ''));
  return {
    columns: [],
    entries: kept.map((entry) => ({ ...entry, others: [] })),
    order: columns.length > 0 && order === 'time' ? 'hand' : order,
    lost,
  };
}

export function makeStore(keep: KeepCaller) {
  return {
    read: (): Stored | undefined => {
      const found = tryStorage(() => parse(sessionStorage.getItem(KEY) ?? 'null'));
      return found && (found.entries.length > 0 || found.lost) ? found : undefined;
    },
    /** What a reload has left out before stays told of. */
    write: (route: Stored): void => {
      tryStorage(() => {
        if (route.entries.length === 0) sessionStorage.removeItem(KEY);
        else {
          const stored = keep === 'tab' ? route : codesOnly(route);
          sessionStorage.setItem(KEY, JSON.stringify(stored));
        }
      });
    },
  };
}
