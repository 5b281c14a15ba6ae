/** The route in this tab. What of it outlives a reload is for `stored.ts`. */
import { batch, createEffect, createMemo, createSignal, on } from 'solid-js';
import type { Reading } from '../../note/types.ts';
import { makeAssess } from '../../visit/assess.ts';
import { MOST_VISITS, isUncoded } from '../../route/limits.ts';
import type { Entries, EntriesProblem, Entry } from '../../route/entries.ts';
import { callerIn, knownColumns, windowOf } from '../../route/known.ts';
import { withEntries } from '../../route/columns.ts';
import { fail, ok, type Result } from '../../result.ts';
import type { Unread, PlannedVisit } from '../../route/types.ts';
import { byUrgency, readVisit } from '../../visit/read-visit.ts';
import { readPasted } from '../../visit/hand-over.ts';
import { jobLabels } from '../shared/job-text.ts';
import type { Caller } from '../../visit/job.ts';
import type { Page } from './page.ts';
import { makeStore, type Stored } from './stored.ts';
import { painted } from '../shared/breathe.ts';
import { inSlices } from '../shared/slices.ts';

/** A line with a name of its own: rows of several lists have the same numbers. */
export type Line = Unread & { readonly id: number };
export type Listed = PlannedVisit & { readonly id: number };
type Exact = Extract<Reading, { kind: 'exact' }>;
/** A line that may become a visit; without a reading it has no code yet. */
type Ready = Entry & { readonly id: number; readonly reading: Exact | undefined };
export type Order = 'urgency' | 'time';

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

export type RouteState = ReturnType<typeof createRoute>;

export function createRoute(page: Page) {
  const [columns, setColumns] = createSignal<readonly string[]>([]);
  const [visits, setVisits] = createSignal<readonly Listed[]>([]);
  const [unread, setUnread] = createSignal<readonly Line[]>([]);
  const [busy, setBusy] = createSignal<Busy>();
  /** Guides of which nothing could be loaded. */
  const [failed, setFailed] = createSignal<readonly string[]>([]);
  const [dirty, setDirty] = createSignal(false);
  const [gone, setGone] = createSignal<{ visit: Listed; at: number }>();
  const [lost, setLost] = createSignal(false);
  const [order, setOrder] = createSignal<Order | 'hand'>('urgency');
  let ids = 0;
  const assess = makeAssess();
  const labels = jobLabels(page.words);
  const readingOf = (text: string) => readPasted(text, page.codebooks, labels).reading;

  const known = createMemo(() => knownColumns(columns(), labels));
  /** Asked for many times by every row: worked out once, until the columns change. */
  const callers = createMemo(() => {
    const [columns, made] = [known(), new WeakMap<readonly string[], Caller>()];
    return (others: readonly string[]): Caller => {
      const found = made.get(others) ?? callerIn(columns, others);
      made.set(others, found);
      return found;
    };
  });
  const callerOf = ({ others }: Pick<Listed, 'others'>) => callers()(others);
  const windowIn = (visit: Pick<Listed, 'others'>) => windowOf(callerOf(visit).time ?? '');
  /** By whom and when a visit is; two problems of one caller are one visit. */
  const visitKey = (visit: Listed): string => {
    const { name = '', phone = '', address = '', time = '' } = callerOf(visit);
    return name + phone + address === ''
      ? String(visit.id)
      : [name, phone, address, time].join('\n');
  };
  /** The problems of one visit one after the other, in the place of the first. */
  const together = (list: readonly Listed[]): Listed[] => {
    const visits = new Map<string, Listed[]>();
    for (const visit of list) {
      const key = visitKey(visit);
      visits.set(key, [...(visits.get(key) ?? []), visit]);
    }
    return [...visits.values()].flat();
  };
  /** Moved by hand: what comes later goes to the end, and nothing else moves. */
  const inOrder = (list: readonly Listed[]): Listed[] => {
    const urgent = byUrgency(list.toSorted((a, b) => a.id - b.id));
    if (order() !== 'time') return together(urgent);
    const timed = urgent.map((visit) => {
      const { day = '', from = Infinity } = windowIn(visit) ?? {};
      return { visit, day, from };
    });
    const byTime = (a: (typeof timed)[number], b: (typeof timed)[number]): number =>
      a.day === b.day ? Math.sign(a.from - b.from) || 0 : a.day < b.day ? -1 : 1;
    return together(timed.toSorted(byTime).map(({ visit }) => visit));
  };
  const visitOf = ({ id, row, others, reading }: Ready): Listed => {
    if (!reading) return { id, row, others, code: undefined, seen: undefined, assessed: undefined };
    const figures = page.guides.known(reading.note.guide)?.figures;
    const seen = readVisit(reading.note, page.codebooks, figures);
    return { id, row, others, code: reading.code, seen, assessed: assess(seen) };
  };
  const working =
    (what: Busy['what'], of: number) =>
    (done: number): void => {
      setBusy({ what, done, of });
    };
  /** Figures first, then each visit's own. */
  const ranked = async (ready: readonly Ready[]): Promise<Listed[]> => {
    working('fetch', 0)(0);
    const missing = await page.guides.need(
      ready.flatMap(({ reading }) => reading?.note.guide ?? []),
    );
    const made = await inSlices(ready, visitOf, working('rank', ready.length));
    setBusy(undefined);
    setFailed((old) => [...new Set([...old, ...missing])]);
    return made;
  };
  const enter = (made: readonly Listed[]): void => {
    setVisits((old) =>
      order() === 'hand' ? [...old, ...inOrder(made)] : inOrder([...old, ...made]),
    );
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
  /** Entries become visits, and lines to mend. */
  const take = async (found: Entries): Promise<Added> => {
    const placed = withEntries(columns(), found);
    const read = (entry: Entry) => ({
      entry,
      reading: isUncoded(entry.text, labels) ? undefined : readingOf(entry.text),
    });
    const total = placed.entries.length;
    working('read', total)(0);
    const lines = await inSlices(placed.entries, read, working('read', total));
    const ready: Ready[] = [];
    const damaged: Line[] = [];
    for (const { entry, reading } of lines) {
      ids += 1;
      if (!reading || reading.kind === 'exact') ready.push({ ...entry, id: ids, reading });
      else damaged.push({ ...entry, id: ids, reading });
    }
    const made = await ranked(ready);
    batch(() => {
      setColumns(placed.columns);
      setUnread((old) => [...old, ...damaged]);
      enter(made);
    });
    return { visits: made.length, unread: damaged.length, column: found.codes };
  };
  const restore = async ({ order: before, lost: gone, ...entries }: Stored): Promise<void> => {
    await page.addBooks();
    // The order it had is the order it comes in.
    setOrder('hand');
    await take({ ...entries, codes: undefined });
    batch(() => {
      setOrder(before);
      setLost(gone);
      setDirty(!gone);
    });
  };
  const store = makeStore(page.keepCaller);
  const before = store.read();
  if (before) void restore(before);
  let unwritten = false;
  const write = (): void => {
    if (!unwritten) return;
    unwritten = false;
    store.write({
      columns: columns(),
      order: order(),
      lost: lost(),
      entries: [...visits(), ...unread()].map((one) => ({
        row: one.row,
        text: 'code' in one ? (one.code ?? '') : one.text,
        others: one.others,
      })),
    });
  };
  createEffect(
    on(
      [columns, visits, unread, order, lost],
      () => {
        // What was changed is shown first.
        unwritten = true;
        void painted().then(write);
      },
      { defer: true },
    ),
  );
  addEventListener('pagehide', write);
  const lineOf = (id: number) => unread().find((line) => line.id === id);

  return {
    columns,
    visits,
    unread,
    busy,
    failed,
    gone,
    /** Whether anything would be lost with the page. */
    unsaved: createMemo(() => dirty() && visits().length + unread().length > 0),
    async add(text: string): Promise<Result<Added, EntriesProblem | { code: 'unloaded' }>> {
      await page.addBooks();
      // With its reader of tables it is a tenth of what the page weighs.
      const reader = await import('../../route/entries.ts').catch(() => undefined);
      if (!reader) return fail({ code: 'unloaded' });
      const room = MOST_VISITS - visits().length - unread().length;
      const found = reader.entriesOf(text, page.codebooks, labels, room);
      return found.ok ? ok(await take(found.value)) : found;
    },
    /** A line's new text; whether it is now a visit. */
    async mend(id: number, text: string): Promise<boolean> {
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
    async confirm(id: number): Promise<void> {
      const line = lineOf(id);
      if (line?.reading.kind !== 'repaired') return;
      const { code, note } = line.reading;
      await become(line, { kind: 'exact', code, note });
    },
    drop: without,
    /** Move a visit to a place; false at the end of the list. */
    move(id: number, to: number): boolean {
      const list = [...visits()];
      const from = list.findIndex((visit) => visit.id === id);
      const [visit] = list.splice(from, 1);
      if (!visit || to < 0 || to > list.length) return false;
      list.splice(to, 0, visit);
      setOrder('hand');
      setVisits(list);
      setDirty(true);
      return true;
    },
    sort(by: Order): void {
      setOrder(by);
      setVisits(inOrder(visits()));
    },
    known,
    callerOf,
    windowOf: windowIn,
    visitKey,
    /** What a reload has left out, where it has: only codes are kept (`desk: keep-caller`). */
    lost,
    takeOut(id: number): void {
      const at = visits().findIndex((visit) => visit.id === id);
      const visit = visits()[at];
      if (!visit) return;
      setGone({ visit, at });
      setVisits(visits().filter((one) => one !== visit));
    },
    putBack(): void {
      const last = gone();
      if (!last) return;
      setVisits(visits().toSpliced(last.at, 0, last.visit));
      setGone(undefined);
    },
    async retry(): Promise<void> {
      const wanted = failed();
      setFailed([]);
      const missing = await page.guides.need(wanted);
      setFailed(missing);
      const again = (visit: Listed): Listed => {
        const { code, seen } = visit;
        if (!code || !seen || !wanted.includes(seen.note.guide)) return visit;
        const reading: Exact = { kind: 'exact', code, note: seen.note };
        return visitOf({ ...visit, text: '', reading });
      };
      setVisits(visits().map(again));
    },
    clear(): void {
      batch(() => {
        setOrder('urgency');
        setLost(false);
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
