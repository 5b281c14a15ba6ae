/**
 * The service worker: the breaker that feeds the range may feed the router. A release is
 * kept whole before it is used, tabs stay with the release they started with, and a new
 * one takes over when no tab of the old one is left, or when asked and nobody is in the
 * middle of a guide.
 */
import { BUSY, TAKE_OVER } from '../messages.ts';
import { cacheOf, find, keep, otherReleases, type Release } from './release.ts';

/** SHA-256 of `precache.json`, put in by the build: the worker changes with every release. */
declare const RELEASE: string;

/** TypeScript cannot know which kind of worker this is. */
declare const self: ServiceWorkerGlobalScope;

const { scope } = self.registration;
const release: Release = { scope, version: RELEASE };

/** Kept beside the files: what to throw away, and the tabs it waits for. */
const LEFTOVERS = new URL('?leftovers', scope).href;
interface Leftovers {
  readonly caches: readonly string[];
  readonly tabs: readonly string[];
}

const windows = (): Promise<readonly WindowClient[]> =>
  self.clients.matchAll({ includeUncontrolled: true, type: 'window' });

/** Older releases go when the last tab that was open at the change has left its page. */
async function tidy(): Promise<void> {
  const cacheName = cacheOf(release);
  const note = await caches.match(LEFTOVERS, { cacheName });
  if (!note) return;
  const { caches: old, tabs } = (await note.json()) as Leftovers;
  if ((await windows()).some(({ id }) => tabs.includes(id))) return;
  for (const name of old) await caches.delete(name);
  await (await caches.open(cacheName)).delete(LEFTOVERS);
}

async function takeOver(): Promise<void> {
  const old = await otherReleases(release);
  if (old.length > 0) {
    const leftovers: Leftovers = { caches: old, tabs: (await windows()).map(({ id }) => id) };
    const cache = await caches.open(cacheOf(release));
    await cache.put(LEFTOVERS, new Response(JSON.stringify(leftovers)));
  }
  await tidy();
  await self.clients.claim();
}

/** A guide's page or the note: `<guide>/<node>/`, `note/`. */
const inTheMiddle = ({ url }: WindowClient): boolean =>
  /^(?:(?!care\/)[\w-]+\/[\w-]+|note)\/$/.test(
    new URL(url).pathname.slice(new URL(scope).pathname.length),
  );

async function answer(request: Request): Promise<Response> {
  const { origin, pathname } = new URL(request.url);
  const url = origin + pathname;
  const kept = await find(release, url);
  if (kept) return kept;
  const folder = request.mode === 'navigate' && !url.endsWith('/') ? `${url}/` : undefined;
  if (folder !== undefined && (await find(release, folder))) return Response.redirect(folder);
  try {
    return await fetch(request);
  } catch (error) {
    // With no network an address that is not kept leads to the first page, not to an error.
    if (request.mode === 'navigate' && url !== scope && (await find(release, scope)))
      return Response.redirect(scope);
    throw error;
  }
}

self.addEventListener('install', (event) => {
  event.waitUntil(keep(release));
});
self.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== new URL(scope).origin) return;
  event.respondWith(answer(request));
  if (request.mode === 'navigate') event.waitUntil(tidy());
});
self.addEventListener('message', (event) => {
  const data: unknown = event.data;
  // Only our own pages have the worker to write to.
  const source = event.source as Client | null;
  if (data !== TAKE_OVER) return;
  const decide = async (): Promise<void> => {
    const busy = (await windows()).some((one) => one.id !== source?.id && inTheMiddle(one));
    if (busy) source?.postMessage(BUSY);
    else await self.skipWaiting();
  };
  event.waitUntil(decide());
});
