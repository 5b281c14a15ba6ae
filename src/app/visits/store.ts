/** The visits kept in this browser's database; every tab of the site sees the same ones. */
import { deleteDB, openDB, type DBSchema, type IDBPDatabase } from 'idb';
import { fail, ok, type Result } from '../../result.ts';
import { inSlices } from '../shared/slices.ts';
import { isStored, type StoredVisit } from './stored.ts';

/** Why the device does not keep or give visits. */
export type StoreProblem =
  /** No database here: switched off, or a private window. */
  | { readonly code: 'store-blocked' }
  | { readonly code: 'store-full' }
  /** Another tab has a newer form of the site and of its database. */
  | { readonly code: 'store-newer' }
  /** `name`: the browser's own. */
  | { readonly code: 'store-failed'; readonly name: string };

interface Shape extends DBSchema {
  visits: {
    /** In the order they were kept. */
    key: number;
    value: StoredVisit;
    indexes: { id: string; code: string };
  };
}

const NAME = 'hobnote';
const VERSION = 1;
/** Tells the other tabs, and the other parts of this page, that something changed. */
const CHANNEL = 'hobnote.visits';

let opened: Promise<IDBPDatabase<Shape>> | undefined;

const open = (): Promise<IDBPDatabase<Shape>> =>
  openDB<Shape>(NAME, VERSION, {
    upgrade(db) {
      const visits = db.createObjectStore('visits', { autoIncrement: true });
      visits.createIndex('id', 'id', { unique: true });
      visits.createIndex('code', 'code');
    },
    blocking(_current, _next, event) {
      // A newer tab waits for us to let go.
      (event.target as IDBDatabase).close();
      opened = undefined;
    },
    terminated() {
      opened = undefined;
    },
  });

/** A database without its store holds nothing, and would get none: it is made anew. */
async function openWhole(): Promise<IDBPDatabase<Shape>> {
  const db = await open();
  if (db.objectStoreNames.contains('visits')) return db;
  db.close();
  await deleteDB(NAME);
  return open();
}

const database = (): Promise<IDBPDatabase<Shape>> => (opened ??= openWhole());

function problemOf(error: unknown): StoreProblem {
  const name = error instanceof Error ? error.name : '';
  if (name === 'QuotaExceededError') return { code: 'store-full' };
  if (name === 'VersionError') return { code: 'store-newer' };
  // Where storage is switched off the browser has no `indexedDB`, or refuses to open it.
  const off = ['SecurityError', 'InvalidStateError', 'ReferenceError', 'TypeError'];
  return off.includes(name) ? { code: 'store-blocked' } : { code: 'store-failed', name };
}

async function attempt<T>(
  work: (db: IDBPDatabase<Shape>) => Promise<T>,
): Promise<Result<T, StoreProblem>> {
  try {
    return ok(await work(await database()));
  } catch (error) {
    // The next attempt opens anew.
    opened = undefined;
    return fail(problemOf(error));
  }
}

/** A channel, where the browser lets us; without one, lists are read anew on reload only. */
function channel(): BroadcastChannel | undefined {
  try {
    return new BroadcastChannel(CHANNEL);
  } catch {
    return undefined;
  }
}

function tellOthers(): void {
  const others = channel();
  others?.postMessage('changed');
  others?.close();
}

export interface Found {
  /** The first kept first. */
  readonly visits: readonly StoredVisit[];
  /** Records that are no visits, as they are. */
  readonly broken: readonly unknown[];
}

/** All that is kept. */
export async function all(): Promise<Result<Found, StoreProblem>> {
  const found = await attempt((db) => db.getAll('visits'));
  if (!found.ok) return found;
  const sound = await inSlices(found.value, isStored);
  return ok({
    visits: found.value.filter((_, index) => sound[index]),
    broken: found.value.filter((_, index) => sound[index] !== true),
  });
}

/**
 * Keep visits; those already here (same `id`) are left as they are. A visit recorded from a
 * note takes the place of what was recorded from the same code. Returns how many are new.
 */
export async function add(visits: readonly StoredVisit[]): Promise<Result<number, StoreProblem>> {
  const done = await attempt(async (db) => {
    const change = db.transaction('visits', 'readwrite');
    let added = 0;
    for (const one of visits) {
      if (one.code !== '')
        for (const old of await change.store.index('code').getAllKeys(one.code))
          await change.store.delete(old);
      if ((await change.store.index('id').getKey(one.id)) !== undefined) continue;
      await change.store.add(one);
      added += 1;
    }
    await change.done;
    return added;
  });
  tellOthers();
  return done;
}

/** Forget one visit. */
export async function remove(id: string): Promise<Result<void, StoreProblem>> {
  const done = await attempt(async (db) => {
    const key = await db.getKeyFromIndex('visits', 'id', id);
    if (key !== undefined) await db.delete('visits', key);
  });
  tellOthers();
  return done;
}

/** Forget them all. */
export async function clear(): Promise<Result<void, StoreProblem>> {
  const done = await attempt((db) => db.clear('visits'));
  tellOthers();
  return done;
}

/** Calls back when anything here or in another tab changes the visits; returns how to stop. */
export function onChange(call: () => void): () => void {
  const others = channel();
  if (others) others.onmessage = call;
  return () => others?.close();
}
