/**
 * The service worker: the breaker that feeds the range may feed the router. A first release is used
 * once the reader's guide is kept; a newer one is kept whole, and waits for the tabs of the old one
 * or a word. What is recalled goes at once, whoever is in the middle of it.
 */
import { ASK, BUSY, KEEP, TAKE_OVER, TAKE_OVER_NOW, type State } from '../messages.ts';
import { daysOld, isGuidePage, recalls, type Recall } from '../recall.ts';
import { ask, fresh, within } from './ask.ts';
import { STAFF, STAFF_PAGES } from './bundle.ts';
import { awaited, awaits, check, checked, forget, remember, remembered } from './memory.ts';
import {
  Altered,
  Full,
  cacheOf,
  find,
  isWhole,
  keep,
  otherReleases,
  releaseOf,
  type Release,
} from './release.ts';

/** Put in by the build: the worker changes with every release. */
declare const BUNDLES: Release['bundles'];
declare const HEADERS: Release['headers'];
/** SHA-256 of both. */
declare const RELEASE: string;
/** What the build knows of this copy. */
declare const COPY: {
  readonly release: number;
  /** ISO 8601 date. */
  readonly built: string;
  /** Days after which it asks to be renewed. */
  readonly renewAfter: number;
  /** What was recalled when it was made. */
  readonly recall: Recall;
  /** Pages that guides start with, and pages whose step has heat, a breaker or a door in it. */
  readonly starts: readonly string[];
  readonly hazards: readonly string[];
};

/** The build writes out what it put in wherever that is named: once is enough. */
const facts = COPY;
/** TypeScript cannot know which kind of worker this is. */
declare const self: ServiceWorkerGlobalScope;

const { scope } = self.registration;
const release: Release = {
  ...{ scope, bundles: BUNDLES, headers: HEADERS, version: RELEASE, number: facts.release },
};
const cacheName = cacheOf(release);
const own = { release: facts.release, pages: facts.recall.pages };
/** In an address, the reader's word that an old copy will do. */
const OLD_WILL_DO = '?old';

/** Kept beside the files: what to throw away, and the tabs it waits for. */
const LEFTOVERS = new URL('?leftovers', scope).href;
interface Leftovers {
  readonly caches: readonly string[];
  readonly tabs: readonly string[];
}

const windows = (): Promise<readonly WindowClient[]> =>
  self.clients.matchAll({ includeUncontrolled: true, type: 'window' });
/** A page's address below the scope. */
const pathOf = (url: string): string => new URL(url).pathname.slice(new URL(scope).pathname.length);
/** The name of the bundle that a guide's or staff's page is in. */
const bundleOf = (url: string): string | undefined =>
  STAFF_PAGES.test(pathOf(url)) ? STAFF : pathOf(url).split('/')[0];

/** Older releases go when the last tab that was open at the change has left its page. */
async function tidy(): Promise<void> {
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
    const cache = await caches.open(cacheName);
    await cache.put(LEFTOVERS, new Response(JSON.stringify(leftovers)));
  }
  await self.clients.claim();
  // Tabs of a recalled copy that had not heard of it, or was still waiting for one to come.
  for (const name of old.filter((name) => releaseOf(name) < facts.recall.least)) {
    const [heard, late] = [await remembered(name), await awaited(name)];
    await turnAway((path, id) => isGuidePage(path) && (!heard || id === late));
  }
  await tidy();
}

/** Why keeping failed, in the about page's words. */
const whyOf = (error: unknown): State =>
  error instanceof Altered ? 'altered' : error instanceof Full ? 'full' : 'failed';

let going: Promise<void> | undefined;
/** Trying again by itself would fetch the same in vain. */
let isHopeless = false;

/**
 * Keeps what is missing, once at a time: the guides that tabs are in first, else the one that the
 * site starts with; staff's pages where one is open or an older copy has them. Rejects once all that
 * could be kept is, and tells open pages why.
 *
 * @param coming a page on its way to its tab
 */
function keepAll(usable = (): void => undefined, coming = scope): Promise<void> {
  const all = async (): Promise<void> => {
    const [, main, ...others] = release.bundles.map(({ name }) => name);
    const open = [coming, ...(await windows()).map(({ url }) => url)].map(bundleOf);
    const early = [main, ...others].filter((name) => open.includes(name));
    const older = (await otherReleases(release)).map((name) => isWhole(name, true));
    const staff = open.includes(STAFF) || (await Promise.all(older)).includes(true);
    await keep(release, early.length > 0 ? early : [main], usable, staff);
  };
  going ??= all()
    .catch(async (error: unknown) => {
      const why = whyOf(error);
      // A lost network alone may be another one by the next page.
      isHopeless = !(error instanceof TypeError);
      const isAlone = (await otherReleases(release)).length === 0;
      for (const tab of isHopeless && isAlone ? await windows() : []) tab.postMessage(why);
      throw error;
    })
    .finally(() => (going = undefined));
  return going;
}

/** With a page: goes on with what a lost network cut, unless the reader saves data. */
async function goOn(url = scope): Promise<void> {
  // What is being kept may have been asked for before there was a page of staff's.
  await going?.catch(() => undefined);
  const { connection } = navigator as { connection?: { saveData?: boolean } };
  if (isHopeless || connection?.saveData === true) return;
  if (await isWhole(cacheName, bundleOf(url) === STAFF)) return;
  await keepAll(undefined, url).catch(() => undefined);
}

/** A newer release that replaces a recalled one, or one never kept whole, waits for nobody. */
async function install(): Promise<void> {
  const others = await otherReleases(release);
  await new Promise<void>((done, failed) => {
    keepAll(others.length === 0 ? done : undefined).then(done, failed);
  }).catch(async (error: unknown) => {
    if (whyOf(error) === 'full') await caches.delete(cacheName);
    throw error;
  });
  for (const name of others)
    if (releaseOf(name) < facts.recall.least || (await remembered(name)) || !(await isWhole(name)))
      await self.skipWaiting();
}

const NOTE = 'note/';
/** A guide's page or the note. */
const isMiddle = (url: string): boolean => isGuidePage(pathOf(url)) || pathOf(url) === NOTE;

/** Leads tabs from pages of the copy to the page that says why; the journey goes with them. */
async function turnAway(which: (path: string, id: string) => boolean): Promise<void> {
  const tabs = await self.clients.matchAll({ type: 'window' });
  for (const tab of tabs.filter(({ id, url }) => which(pathOf(url), id))) {
    const to = away('recalled', pathOf(tab.url)) + new URL(tab.url).hash;
    // Not waited for: the page it leads to may be this worker's to answer after this.
    tab.navigate(to).catch(() => undefined);
  }
}

/** A page of the copy that says why the asked one is not shown, and leads there. */
const away = (page: 'recalled' | 'renew', path: string): string => `${scope}${page}/?${path}`;

/** Is any of this copy recalled? Remembers it then, and says whether that is news. */
async function note(recall: Recall, client: string): Promise<'none' | 'news' | 'known'> {
  await check(cacheName);
  const before = await remembered(cacheName);
  if (recall.least <= own.release && !recall.pages.some((page) => isNew(recall, page))) {
    if (before) await forget(cacheName);
    return 'none';
  }
  if (JSON.stringify(before) === JSON.stringify(recall)) return 'known';
  await awaits(cacheName, client);
  await remember(cacheName, recall);
  return 'news';
}

/** Pages on their way to their tabs. */
const coming = new Set<Promise<void>>();
/** Settles once the answer is a tab, or after three seconds: `clients.get` may wait in vain. */
async function arrives(answer: Promise<Response>, client: string): Promise<void> {
  await answer.catch(() => undefined);
  for (let tries = 30; tries > 0; tries -= 1) {
    const tabs = await self.clients.matchAll({ type: 'window' });
    if (tabs.some(({ id, url }) => id === client && url.startsWith(scope))) return;
    await new Promise((done) => setTimeout(done, 100));
  }
}

/** Leads tabs away where the recall is news, and takes the newer release. */
async function heed(recall: Recall, isNews: boolean): Promise<void> {
  if (isNews) {
    // A page that is being left would lose the answer given on it, were it led away.
    await Promise.all(coming);
    // Where it is no news, tabs that came since are on pages of the network.
    await turnAway((path) => recalls(recall, own, path));
  }
  const { registration } = self;
  await registration.update().catch(() => undefined);
  // What is being kept looks itself for what it replaces; what waits already did so too early.
  if (!registration.installing) registration.waiting?.postMessage(TAKE_OVER_NOW);
}
const isNew = ({ pages }: Recall, page: string): boolean =>
  pages.filter((one) => one === page).length > own.pages.filter((one) => one === page).length;

/** Where a new release has no such page, its page for lost addresses leads on. */
async function fromNetwork({ url }: Request): Promise<Response | undefined> {
  const { signal, stop } = within(10_000);
  // Redirects would be shown under the wrong address.
  const response = await fetch(url, { cache: 'no-cache', redirect: 'error', signal }).catch(
    () => undefined,
  );
  stop();
  return response?.ok === true || response?.status === 404 ? response : undefined;
}

const lastChecked = async (): Promise<number> =>
  Math.max(Date.parse(facts.built), await checked(cacheName));

/** Asks beside; the answer, once it is remembered. What it asks of this copy is done after that. */
async function askBeside(event: ExtendableEvent, client = ''): Promise<Recall | undefined> {
  const recall = await ask(scope);
  const kind = recall && (await note(recall, client));
  if (recall && kind !== 'none') event.waitUntil(heed(recall, kind === 'news'));
  return recall;
}

/** Is a tab on a page with heat, a breaker or a door in it, with no answer of late? */
async function leavesHazard(): Promise<boolean> {
  if (fresh()) return false;
  const tabs = await self.clients.matchAll({ type: 'window' });
  return tabs.some(({ url }) => facts.hazards.includes(pathOf(url)));
}

/** Is it the start of a guide in a copy that has found no newer word for too long? */
async function startsOld({ url }: Request): Promise<boolean> {
  return (
    facts.starts.includes(pathOf(url)) &&
    new URL(url).search !== OLD_WILL_DO &&
    daysOld(await lastChecked(), Date.now()) > facts.renewAfter
  );
}

/**
 * A guide's page comes at once from the copy, and `recall.json` is asked for beside. Two pages wait
 * for its answer, a few seconds at the most: what follows an answer given on a page with heat,
 * breaker or door in it, and the start of a guide in an old copy.
 */
async function guidePage(event: FetchEvent, kept: Response): Promise<Response> {
  const { request } = event;
  const path = pathOf(request.url);
  const isOld = await startsOld(request);
  const waits = isOld || (await leavesHazard());
  const asked = askBeside(event, event.resultingClientId);
  event.waitUntil(asked);
  const answered = waits ? await asked : undefined;
  const recall = await remembered(cacheName);
  if (recall && (path === NOTE || recalls(recall, own, path))) {
    const right = await fromNetwork(request);
    return right ?? (path === NOTE ? kept : Response.redirect(away('recalled', path)));
  }
  return isOld && !answered ? Response.redirect(away('renew', path)) : kept;
}

/** To a page of ours: what the network says of recalls, and what this copy is. */
async function aboutCopy(event: FetchEvent): Promise<Response> {
  const recall = await askBeside(event);
  const { built, release: number } = facts;
  const copy = { release: number, built, checked: await lastChecked() };
  return new Response(JSON.stringify({ ...recall, copy }));
}

async function answer(event: FetchEvent): Promise<Response> {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  const url = origin + pathname;
  if (pathOf(url) === 'recall.json') return aboutCopy(event);
  const kept = await find(release, url);
  if (kept && isMiddle(url)) {
    if (request.mode === 'navigate') return guidePage(event, kept);
    const recall = await remembered(cacheName);
    // Is a page still there? Not what the copy has of it counts.
    if (recall && recalls(recall, own, pathOf(url))) return fetch(request);
  }
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
  event.waitUntil(install());
});
self.addEventListener('activate', (event) => {
  event.waitUntil(takeOver());
});
self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== new URL(scope).origin) return;
  const answered = answer(event);
  event.respondWith(answered);
  if (request.mode !== 'navigate') return;
  const there = arrives(answered, event.resultingClientId).finally(() => coming.delete(there));
  coming.add(there);
  event.waitUntil(Promise.all([there, tidy(), goOn(request.url)]));
});
self.addEventListener('message', (event) => {
  const data: unknown = event.data;
  // Only our own pages and the release before have the worker to write to.
  const source = event.source as Client | null;
  const decide = async (): Promise<void> => {
    const busy = (await windows()).some(({ id, url }) => id !== source?.id && isMiddle(url));
    if (busy && data === TAKE_OVER) source?.postMessage(BUSY);
    else await self.skipWaiting();
  };
  const tell = async (): Promise<void> => {
    const state = async (): Promise<State> => ((await isWhole(cacheName)) ? 'kept' : 'not');
    const now = await state();
    source?.postMessage(now === 'not' && data === KEEP ? 'partly' : now);
    if (now === 'not' && data === KEEP)
      source?.postMessage(await keepAll().then(() => 'kept' as const, whyOf));
  };
  if (data === TAKE_OVER || data === TAKE_OVER_NOW) event.waitUntil(decide());
  if (data === ASK || data === KEEP) event.waitUntil(tell());
});
