/** The route in this tab: nothing of it is stored. */
import { batch, createMemo, createSignal, type Accessor } from 'solid-js';
import type { Reading } from '../../note/types.ts';
import { makeAssess } from '../../visit/assess.ts';
import { MOST_VISITS, entriesOf, type EntriesProblem, type Entry } from '../../route/entries.ts';
import { withEntries } from '../../route/columns.ts';
import { ok, type Result } from '../../result.ts';
import type { Unread, PlannedVisit } from '../../route/types.ts';
import { byUrgency, readVisit } from '../../visit/read-visit.ts';
import { readPasted } from '../../visit/hand-over.ts';
import { jobLabels } from '../shared/job-text.ts';
import type { Page } from './page.ts';
import { inSlices } from './slices.ts';

/** A line with a name of its own: rows of several lists have the same numbers. */
export type Line = Unread & { readonly id: number };
export type Listed = PlannedVisit & { readonly id: number };
type Exact = Extract<Reading, { kind: 'exact' }>;
/** A line that may become a visit. */
type Ready = Entry & { readonly id: number; readonly reading: Exact };

/** What is being done, and how much of it. */
export interface Busy {
  readonly what: 'read' | 'fetch' | 'rank';
  readonly done: number;
  readonly of: number;
}

export interface Added {
  readonly visits: number;
  readonly unread: number;
  readonly column: string | undefined;
}

export interface RouteState {
  readonly columns: Accessor<readonly string[]>;
  readonly visits: Accessor<readonly Listed[]>;
  readonly unread: Accessor<readonly Line[]>;
  readonly busy: Accessor<Busy | undefined>;
  /** Guides of which nothing could be loaded. */
  readonly failed: Accessor<readonly string[]>;
  /** Whether anything would be lost with the page. */
  readonly unsaved: Accessor<boolean>;
  readonly gone: Accessor<{ readonly visit: Listed; readonly at: number } | undefined>;
  add(text: string): Promise<Result<Added, EntriesProblem>>;
  /** A line's new text; whether it is now a visit. */
  mend(id: number, text: string): Promise<boolean>;
  confirm(id: number): Promise<void>;
  drop(id: number): void;
  /** Move a visit to a place; false at the end of the list. */
  move(id: number, to: number): boolean;
  sort(): void;
  takeOut(id: number): void;
  putBack(): void;
  retry(): Promise<void>;
  clear(): void;
  saved(): void;
}

export function createRoute(page: Page): RouteState {
  const [columns, setColumns] = createSignal<readonly string[]>([]);
  const [visits, setVisits] = createSignal<readonly Listed[]>([]);
  const [unread, setUnread] = createSignal<readonly Line[]>([]);
  const [busy, setBusy] = createSignal<Busy>();
  const [failed, setFailed] = createSignal<readonly string[]>([]);
  const [dirty, setDirty] = createSignal(false);
  const [gone, setGone] = createSignal<{ visit: Listed; at: number }>();
  // Moved by hand: what comes later goes to the end, and nothing else moves.
  let byHand = false;
  let ids = 0;
  const assess = makeAssess();
  const labels = jobLabels(page.words);
  const readingOf = (text: string) => readPasted(text, page.codebooks, labels).reading;

  const visitOf = ({ id, row, others, reading }: Ready): Listed => {
    const known = page.guides.known(reading.note.guide);
    const seen = readVisit(reading.note, page.codebooks, known?.figures);
    const assessed = assess(seen);
    return { id, row, others, code: reading.code, seen, assessed };
  };
  const working =
    (what: Busy['what'], of: number) =>
    (done: number): void => {
      setBusy({ what, done, of });
    };
  /** Figures first, then each visit's own. */
  const ranked = async (ready: readonly Ready[]): Promise<Listed[]> => {
    working('fetch', 0)(0);
    const missing = await page.guides.need(ready.map(({ reading }) => reading.note.guide));
    const made = await inSlices(ready, visitOf, working('rank', ready.length));
    setBusy(undefined);
    setFailed((old) => [...new Set([...old, ...missing])]);
    return made;
  };
  const enter = (made: readonly Listed[]): void => {
    setVisits((old) => (byHand ? [...old, ...byUrgency(made)] : byUrgency([...old, ...made])));
    setDirty(true);
  };
  const without = (id: number): void => {
    setUnread((old) => old.filter((line) => line.id !== id));
  };
  const become = async (line: Line, reading: Exact): Promise<void> => {
    const made = await ranked([{ ...line, reading }]);
    batch(() => {
      without(line.id);
      enter(made);
    });
  };
  const lineOf = (id: number) => unread().find((line) => line.id === id);

  return {
    columns,
    visits,
    unread,
    busy,
    failed,
    gone,
    unsaved: createMemo(() => dirty() && visits().length + unread().length > 0),
    async add(text) {
      await page.addBooks();
      const room = MOST_VISITS - visits().length - unread().length;
      const found = entriesOf(text, page.codebooks, labels, room);
      if (!found.ok) return found;
      const { codes } = found.value;
      const placed = withEntries(columns(), found.value);
      const read = (entry: Entry) => ({ entry, reading: readingOf(entry.text) });
      const total = placed.entries.length;
      working('read', total)(0);
      const lines = await inSlices(placed.entries, read, working('read', total));
      const ready: Ready[] = [];
      const damaged: Line[] = [];
      for (const { entry, reading } of lines) {
        ids += 1;
        if (reading.kind === 'exact') ready.push({ ...entry, id: ids, reading });
        else damaged.push({ ...entry, id: ids, reading });
      }
      const made = await ranked(ready);
      batch(() => {
        setColumns(placed.columns);
        setUnread((old) => [...old, ...damaged]);
        enter(made);
      });
      return ok({ visits: made.length, unread: damaged.length, column: codes });
    },
    async mend(id, text) {
      const line = lineOf(id);
      if (!line) return false;
      const reading = readingOf(text);
      if (reading.kind === 'exact') {
        await become(line, reading);
        return true;
      }
      setUnread((old) => old.map((one) => (one.id === id ? { ...one, text, reading } : one)));
      setDirty(true);
      return false;
    },
    async confirm(id) {
      const line = lineOf(id);
      if (line?.reading.kind !== 'repaired') return;
      const { code, note } = line.reading;
      await become(line, { kind: 'exact', code, note });
    },
    drop: without,
    move(id, to) {
      const list = [...visits()];
      const from = list.findIndex((visit) => visit.id === id);
      const [visit] = list.splice(from, 1);
      if (!visit || to < 0 || to > list.length) return false;
      list.splice(to, 0, visit);
      byHand = true;
      setVisits(list);
      setDirty(true);
      return true;
    },
    sort() {
      byHand = false;
      setVisits(byUrgency(visits().toSorted((a, b) => a.id - b.id)));
    },
    takeOut(id) {
      const at = visits().findIndex((visit) => visit.id === id);
      const visit = visits()[at];
      if (!visit) return;
      setGone({ visit, at });
      setVisits(visits().filter((one) => one !== visit));
    },
    putBack() {
      const last = gone();
      if (!last) return;
      setVisits(visits().toSpliced(last.at, 0, last.visit));
      setGone(undefined);
    },
    async retry() {
      const wanted = failed();
      setFailed([]);
      const missing = await page.guides.need(wanted);
      setFailed(missing);
      const again = ({ id, row, others, code, seen }: Listed): Listed =>
        visitOf({ id, row, others, text: '', reading: { kind: 'exact', code, note: seen.note } });
      setVisits(
        visits().map((visit) => (wanted.includes(visit.seen.note.guide) ? again(visit) : visit)),
      );
    },
    clear() {
      byHand = false;
      batch(() => {
        setVisits([]);
        setUnread([]);
        setColumns([]);
        setGone(undefined);
        setFailed([]);
      });
    },
    saved: () => setDirty(false),
  };
}
