/** The calls of this tab besides the one at hand: on hold, or over and yet to be taken back. */
import { createSignal } from 'solid-js';
import { isRecord } from '../../guide/shape.ts';
import type { NoteCode } from '../../note/types.ts';
import { tidyCaller, type Caller } from '../../visit/job.ts';
import { keep, kept, type Keeper } from './keeper.ts';

/** A call as it is taken up again. */
export interface CallRecord {
  readonly id: number;
  /** Undefined where the caller has not said yet what is wrong. */
  readonly guide?: string | undefined;
  /** Its answers, the display's text and the details, as an address has them. */
  readonly hash: string;
  readonly caller: Caller;
  /** Pages whose cautions were read out. */
  readonly read: readonly string[];
  /** Codes of the same caller's problems told before, for the same visit. */
  readonly also?: readonly NoteCode[] | undefined;
  /** The code that the caller read back. */
  readonly readBack?: string | undefined;
  /** Milliseconds since 1970: when it began, and when the last answer was given. */
  readonly began: number;
  readonly answered?: number | undefined;
  /** Whether it waits to be gone on with. */
  readonly held: boolean;
  /** The job's text as it was last copied; undefined where it never was. */
  readonly copied?: string | undefined;
  /** What a list shows of it: where it stands. */
  readonly at: string;
}

/** Calls that are over are kept up to this many; those on hold all are. */
export const MOST_OVER = 10;

const KEY = 'hobnote.desk.calls';

function isCall(value: unknown): value is CallRecord {
  if (!isRecord(value)) return false;
  const { guide, hash, at, id, began, read, caller, also = [] } = value;
  return (
    ['string', 'undefined'].includes(typeof guide) &&
    [hash, at].every((text) => typeof text === 'string') &&
    [id, began].every((number) => typeof number === 'number') &&
    [read, also].every(Array.isArray) &&
    isRecord(caller)
  );
}

export type CallList = ReturnType<typeof createCallList>;

/** @param fresh the tab begins anew: nothing of a copied tab is taken up */
export function createCallList(keeper: Keeper, fresh: boolean) {
  const before = fresh ? [] : kept(keeper, KEY);
  const [list, setList] = createSignal<readonly CallRecord[]>(
    Array.isArray(before)
      ? before.filter(isCall).map((one) => ({ ...one, caller: tidyCaller(one.caller) }))
      : [],
  );
  const set = (records: readonly CallRecord[]): void => {
    const over = new Set(records.filter(({ held }) => !held).slice(MOST_OVER));
    setList(records.filter((one) => !over.has(one)));
    keep(keeper, KEY, list().length > 0 ? list() : undefined);
  };
  if (fresh) set([]);
  return {
    /** The newest first. */
    list,
    put: (record: Omit<CallRecord, 'id'>) =>
      set([{ ...record, id: 1 + Math.max(0, ...list().map(({ id }) => id)) }, ...list()]),
    /** Take one out of the list. */
    take(id: number): CallRecord | undefined {
      const found = list().find((one) => one.id === id);
      set(list().filter((one) => one !== found));
      return found;
    },
  };
}
