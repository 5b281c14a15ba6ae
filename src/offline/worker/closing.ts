/** A worker that takes itself and all that was kept off the device: for a firm that closes. */
import { prefixOf } from './release.ts';

/** TypeScript cannot know which kind of worker this is. */
declare const self: ServiceWorkerGlobalScope;

const { registration, clients } = self;

async function leave(): Promise<void> {
  for (const name of await caches.keys())
    if (name.startsWith(prefixOf(registration))) await caches.delete(name);
  await registration.unregister();
  // Without claiming: pages still open leave for the first page, which says that the site is closed.
  for (const tab of await clients.matchAll({ includeUncontrolled: true, type: 'window' }))
    if (tab.url.startsWith(registration.scope))
      tab.navigate(registration.scope).catch(() => undefined);
}

self.addEventListener('install', (event) => {
  event.waitUntil(self.skipWaiting());
});
self.addEventListener('activate', (event) => {
  event.waitUntil(leave());
});
