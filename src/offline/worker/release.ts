/**
 * One release of the site kept on the device: a cache of its own, filled and verified
 * file by file before anything is served from it.
 */

/** What the build lists in `precache.json`. */
export interface Listed {
  /** Address relative to the worker's scope → SHA-256 of the file, base 64. */
  readonly files: Readonly<Record<string, string>>;
  /** Bytes of all files, not compressed: what they take up when kept. */
  readonly bytes: number;
}

/** Where a release's files are and what it is called. */
export interface Release {
  /** The worker's scope: an address ending in a slash. */
  readonly scope: string;
  /** SHA-256 of the release's `precache.json`, base 64. */
  readonly version: string;
  /** The release of the codes it writes, which recalls name. */
  readonly number: number;
}

/**
 * Downloads at the same time. Few, and of low priority: a reader's next page goes first.
 */
const AT_ONCE = 3;
/** Room asked for, as a multiple of the files' bytes: every entry brings headers and an index. */
const ROOM = 1.5;

/** Caches are shared by all of an origin's folders: the scope keeps copies of the site apart. */
export const prefixOf = ({ scope }: { readonly scope: string }): string => `hobnote ${scope} `;
export const cacheOf = (release: Release): string =>
  `${prefixOf(release)}${String(release.number)} ${release.version}`;
/** The release kept under a cache's name; 0 for copies from before they were told to say it. */
export const releaseOf = (cacheName: string): number =>
  Number(/ (\d+) \S+$/.exec(cacheName)?.[1] ?? 0);

/** SHA-256 in base 64, as the build writes it. */
async function digest(body: ArrayBuffer): Promise<string> {
  const bytes = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return btoa(String.fromCharCode(...bytes));
}

/** A file that is not the one listed; its message is for whoever looks at the worker. */
export class Altered extends Error {}
/** A device that is too full. */
export class Full extends Error {}

/** A file as it should be, or an exception: one wrong byte, and the release is not kept. */
async function fetched(url: string, hash: string): Promise<Response> {
  // Files named by their content never change; all others are asked for again.
  const cache = url.includes('/_astro/') ? 'default' : 'no-cache';
  const response = await fetch(url, { cache, priority: 'low' });
  const body = await response.arrayBuffer();
  if (!response.ok || (await digest(body)) !== hash) throw new Altered(url);
  // A new response: a redirected one cannot answer a navigation, and the body is unpacked.
  const headers = new Headers(response.headers);
  headers.delete('content-encoding');
  headers.delete('content-length');
  return new Response(body, { headers });
}

async function list({ scope, version }: Release): Promise<Listed> {
  const response = await fetched(new URL('precache.json', scope).href, version);
  return (await response.json()) as Listed;
}

async function hasRoom(bytes: number): Promise<boolean> {
  // Safari before 17 cannot say, and keeps the site all the same; where room runs out, it is told.
  const storage = navigator.storage as Partial<StorageManager> | undefined;
  const { quota, usage = 0 } = (await storage?.estimate?.()) ?? {};
  return quota === undefined || quota - usage >= bytes * ROOM;
}

/**
 * Keeps every file of a release. What an earlier, cut attempt has verified is not fetched
 * again. Rejects when the network fails, a file is not of this release, or there is no
 * room; then what was kept so far stays for the next attempt, except where room ran out.
 */
export async function keep(release: Release): Promise<void> {
  const { files, bytes } = await list(release);
  if (!(await hasRoom(bytes))) throw new Full();
  const name = cacheOf(release);
  const cache = await caches.open(name);
  const kept = new Set((await cache.keys()).map(({ url }) => url));
  const left = Object.entries(files)
    .map(([path, hash]) => [new URL(path, release.scope).href, hash] as const)
    .filter(([url]) => !kept.has(url));
  const work = async (): Promise<void> => {
    for (let next = left.pop(); next; next = left.pop())
      await cache.put(next[0], await fetched(...next));
  };
  try {
    await Promise.all(Array.from({ length: AT_ONCE }, work));
  } catch (error) {
    left.length = 0;
    const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
    if (isFull) await caches.delete(name);
    throw isFull ? new Full() : error;
  }
}

/** The cache names of other releases of the same copy of the site. */
export async function otherReleases(release: Release): Promise<string[]> {
  const own = cacheOf(release);
  return (await caches.keys()).filter((name) => name.startsWith(prefixOf(release)) && name !== own);
}

/**
 * A kept file. The release's own first; of older ones only files named by their content,
 * which a tab opened before an update may still ask for.
 *
 * @param url without query and fragment
 */
export async function find(release: Release, url: string): Promise<Response | undefined> {
  const own = await caches.match(url, { cacheName: cacheOf(release) });
  if (own || !url.includes('/_astro/')) return own;
  for (const cacheName of await otherReleases(release)) {
    const old = await caches.match(url, { cacheName });
    if (old) return old;
  }
  return undefined;
}
