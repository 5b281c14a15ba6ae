/** What a copy remembers beside its files. Its cache is gone with it, and so is this. */
import { daysOld, parseRecall, type Recall } from '../recall.ts';

const keyOf = (name: string): string => new URL(`?${name}`, location.href).href;

async function read(cacheName: string, key: string): Promise<unknown> {
  const found = await caches.match(keyOf(key), { cacheName });
  // What cannot be read is as good as not there: no page fails for it.
  return found?.json().catch(() => undefined);
}

async function write(cacheName: string, key: string, value: unknown): Promise<void> {
  // A newer worker may have taken the copy off the device: that is no reason to begin another.
  if (!(await caches.has(cacheName))) return;
  await (await caches.open(cacheName)).put(keyOf(key), new Response(JSON.stringify(value)));
}

/** A recall of the copy or of pages of its: it holds without a network, too. */
export const remembered = async (cacheName: string): Promise<Recall | undefined> =>
  parseRecall(await read(cacheName, 'recall'));
export const remember = (cacheName: string, recall: Recall): Promise<void> =>
  write(cacheName, 'recall', recall);
/** The tab that was to be turned away when it comes: a newer worker may be there before it. */
export const awaited = (cacheName: string): Promise<unknown> => read(cacheName, 'awaited');
export const awaits = (cacheName: string, client: string): Promise<void> =>
  write(cacheName, 'awaited', client);
/** A recall may be taken back. */
export async function forget(cacheName: string): Promise<void> {
  await (await caches.open(cacheName)).delete(keyOf('recall'));
}

/** When the site last answered, in milliseconds; 0 where it never did, or a clock set back hides it. */
export async function checked(cacheName: string): Promise<number> {
  const at = Number(await read(cacheName, 'checked'));
  return daysOld(Date.now(), at) > 0 ? 0 : at || 0;
}
export async function check(cacheName: string): Promise<void> {
  const now = Date.now();
  if (daysOld(await checked(cacheName), now) > 0) await write(cacheName, 'checked', now);
}

/** Names of a release's bundles that are not kept yet; undefined where none ever was asked for. */
export const missing = async (cacheName: string): Promise<readonly string[] | undefined> =>
  (await read(cacheName, 'missing')) as readonly string[] | undefined;
export const remainMissing = (cacheName: string, names: Iterable<string>): Promise<void> =>
  write(cacheName, 'missing', [...names]);
