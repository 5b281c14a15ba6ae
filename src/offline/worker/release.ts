/** One release kept on the device: a cache of its own, filled by bundles, each verified before. */
import { STAFF, digest, unpack, type Bundle, type Packed } from './bundle.ts';
import { missing, remainMissing } from './memory.ts';

/** Where a release's files are and what it is called. */
export interface Release {
  /** The worker's scope: an address ending in a slash. */
  readonly scope: string;
  /** What all pages share, one for each guide, the first one that of most readers, the rest, and staff's. */
  readonly bundles: readonly [shared: Bundle, ...others: Bundle[]];
  /** Headers that its files are answered with. */
  readonly headers: readonly Readonly<Record<string, string>>[];
  /** SHA-256 of both as JSON, base 64. */
  readonly version: string;
  /** The release of the codes it writes, which recalls name. */
  readonly number: number;
}

/** Room asked for, as a multiple of the files' bytes: every entry brings headers and an index. */
const ROOM = 1.5;
/** The bundle that others look back at, until all are kept. */
const sharedKey = (): string => new URL('?shared', location.href).href;

/** Caches are shared by all of an origin's folders: the scope keeps copies of the site apart. */
export const prefixOf = ({ scope }: { readonly scope: string }): string => `hobnote ${scope} `;
export const cacheOf = (release: Release): string =>
  `${prefixOf(release)}${String(release.number)} ${release.version}`;
/** The release kept under a cache's name; 0 for copies from before they were told to say it. */
export const releaseOf = (cacheName: string): number =>
  Number(/ (\d+) \S+$/.exec(cacheName)?.[1] ?? 0);

/** A bundle that is not the one listed; its message is for whoever looks at the worker. */
export class Altered extends Error {}
/** A device that is too full. */
export class Full extends Error {}

/** Of low priority: a reader's next page goes first. */
const ask = (url: string, cache: RequestCache) => fetch(url, { cache, priority: 'low' });

/** A bundle as it should be, or an exception: nothing of one with a wrong byte is kept. */
async function verified(url: string, hash: string, answer: Promise<Response>): Promise<Packed> {
  // Named by its content, it never changes; where the browser's own cache holds another, past it.
  for (const again of [false, true]) {
    const response = await (again ? ask(url, 'reload') : answer);
    if (!response.ok) throw new Error(`${url}: ${String(response.status)}`);
    const body = await response.arrayBuffer();
    if ((await digest(body)) === hash) return JSON.parse(new TextDecoder().decode(body)) as Packed;
  }
  throw new Altered(url);
}

async function hasRoom(bundles: readonly Bundle[]): Promise<boolean> {
  const bytes = bundles.reduce((sum, bundle) => sum + bundle.bytes, 0);
  // Safari before 17 cannot say, and keeps the site all the same; where room runs out, it is told.
  const storage = navigator.storage as Partial<StorageManager> | undefined;
  const { quota, usage = 0 } = (await storage?.estimate?.()) ?? {};
  return quota === undefined || quota - usage >= bytes * ROOM;
}

/** Has a cache all of its release, and staff's part where that is asked? Those of before bundles have. */
export const isWhole = async (cacheName: string, staff = false): Promise<boolean> =>
  ((await missing(cacheName)) ?? []).every((one) => one === STAFF && !staff);

/**
 * Keeps what is missing of a release: the shared bundle and some others first, then the rest.
 * Rejects for a lost network, a wrong bundle or a full device; what was kept stays for the next time.
 *
 * @param early names of bundles that come first
 * @param usable called once these are kept
 * @param staff whether staff's is wanted
 */
export async function keep(
  release: Release,
  early: readonly (string | undefined)[],
  usable: () => void,
  staff = false,
): Promise<void> {
  const { bundles, headers, scope } = release;
  const [shared] = bundles;
  const name = cacheOf(release);
  const cache = await caches.open(name);
  const left = new Set((await missing(name)) ?? bundles.map((bundle) => bundle.name));
  const wants = (bundle: Bundle) => left.has(bundle.name) && (staff || bundle.name !== STAFF);
  if (!bundles.some(wants)) return;
  const before = left.has(shared.name) ? undefined : await cache.match(sharedKey());
  if (!before && bundles.some((bundle) => bundle.name !== STAFF && wants(bundle)))
    left.add(shared.name);
  await remainMissing(name, left);

  const come = (bundle: Bundle) => {
    const url = new URL(bundle.path, scope).href;
    const answer = ask(url, 'default');
    return { bundle, answer, packed: verified(url, bundle.hash, answer) };
  };
  const open = async ({ path }: Bundle, packed: Packed, base: Uint8Array) => {
    const bytes = unpack(packed, base);
    if ((await digest(bytes)) !== packed.hash) throw new Altered(path);
    return bytes;
  };
  const store = async (bundle: Bundle, { files }: Packed, bytes: Uint8Array<ArrayBuffer>) => {
    let at = 0;
    const entries = files.map(([path, size, kind]) => {
      const body = bytes.subarray(at, (at += size));
      return cache.put(new URL(path, scope), new Response(body, { headers: headers[kind] ?? {} }));
    });
    if (bundle === shared) entries.push(cache.put(sharedKey(), new Response(bytes)));
    await Promise.all(entries);
    left.delete(bundle.name);
    await remainMissing(name, left);
  };

  const wanted = bundles.filter(wants);
  const first = wanted.filter((bundle) => bundle === shared || early.includes(bundle.name));
  const later = wanted.filter((bundle) => !first.includes(bundle));
  if (!(await hasRoom(first))) throw new Full();
  const room = hasRoom(wanted);
  const coming = first.map(come);
  const begun = Promise.all(coming.map(({ answer }) => answer));
  const arrived = Promise.all(coming.map(({ packed }) => packed));
  const kept = async () => new Uint8Array((await before?.arrayBuffer()) ?? new ArrayBuffer(0));
  const common = coming.find(({ bundle }) => bundle === shared);
  const base = common?.packed.then((packed) => open(shared, packed, new Uint8Array())) ?? kept();
  const ready = coming.map(async ({ bundle, packed: coming }) => {
    const packed = await coming;
    const bytes = bundle === shared ? await base : await open(bundle, packed, await base);
    await store(bundle, packed, bytes);
  });
  const others = later.map(async (bundle, place) => {
    // They share line and device with the first. One is asked for when these begin to come, so that
    // the line does not rest; others once they have. All are put in place after them.
    await (place === 0 ? begun : arrived);
    if (!(await room)) throw new Full();
    const packed = await come(bundle).packed;
    await Promise.all(ready);
    await store(bundle, packed, await open(bundle, packed, await base));
  });
  const all = Promise.allSettled([base, begun, arrived, ...ready, ...others]);
  await Promise.all(ready).then(usable, () => undefined);
  // Those that wrote what is left at the same time may have done so in any order.
  const ends = [...(await all), ...(await Promise.allSettled([remainMissing(name, left)]))];
  for (const one of ends) if (one.status === 'rejected') throw asFull(one.reason);
  await cache.delete(sharedKey());
}

/** Browsers tell in their own way that a device is full. */
const asFull = (error: unknown): unknown =>
  error instanceof DOMException && error.name === 'QuotaExceededError' ? new Full() : error;

/** The cache names of other releases of the same copy of the site. */
export async function otherReleases(release: Release): Promise<string[]> {
  const own = cacheOf(release);
  return (await caches.keys()).filter((name) => name.startsWith(prefixOf(release)) && name !== own);
}

/**
 * A kept file; of older releases one named by its content, which a tab from before may still ask for.
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
