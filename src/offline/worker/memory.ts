/** What a copy remembers beside its files. Its cache is gone with it, and so is this. */
import { daysOld, parseRecall, type Recall } from '../recall.ts';

const keyOf = (name: string): string => new URL(`?${name}`, location.href).href;

async function read(cacheName: string, key: string): Promise<unknown> {
  const found = await caches.match(keyOf(key), { cacheName });
  return found?.json();
}

async function write(cacheName: string, key: string, value: unknown): Promise<void> {
  await (await caches.open(cacheName)).put(keyOf(key), new Response(JSON.stringify(value)));
}

/** A recall of the copy or of pages of its: it holds without a network, too. */
export const remembered = async (cacheName: string): Promise<Recall | undefined> =>
  parseRecall(await read(cacheName, 'recall'));
export const remember = (cacheName: string, recall: Recall): Promise<void> =>
  write(cacheName, 'recall', recall);
/** A recall may be taken back. */
export async function forget(cacheName: string): Promise<void> {
  await (await caches.open(cacheName)).delete(keyOf('recall'));
}

/** When the site last answered, in milliseconds; 0 where it never did. */
export const checked = async (cacheName: string): Promise<number> =>
  Number((await read(cacheName, 'checked')) ?? 0);
export async function check(cacheName: string): Promise<void> {
  const now = Date.now();
  if (daysOld(await checked(cacheName), now) > 0) await write(cacheName, 'checked', now);
}
