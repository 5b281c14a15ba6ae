// Bundles: made by the build, kept by the worker, with a network and a store that stand in.
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { unpack, type Bundle, type Packed } from '../../../src/offline/worker/bundle.ts';
import { missing } from '../../../src/offline/worker/memory.ts';
import {
  Altered,
  Full,
  cacheOf,
  isWhole,
  keep,
  type Release,
} from '../../../src/offline/worker/release.ts';
import { pack } from '../../../src/site/build/pack.ts';

const SCOPE = 'https://range.example/some/folder/';
const digest = (data: string | Buffer) => createHash('sha256').update(data).digest('base64');

describe('what is packed', () => {
  const unpacked = (files: Buffer, before: Buffer) => {
    const packed = {
      ...({ files: [['', files.length, 0]], hash: '' } as const),
      ...pack(files, before),
    };
    const sent = JSON.parse(JSON.stringify(packed)) as Packed;
    return { sent, bytes: Buffer.from(unpack(sent, before)) };
  };

  it('is unpacked to the same bytes, whatever they are and however they repeat', () => {
    const piece = fc.uint8Array({ minLength: 1, maxLength: 150 });
    const alike = fc
      .tuple(
        fc.array(piece, { minLength: 1, maxLength: 4 }),
        fc.array(fc.nat(3), { maxLength: 30 }),
      )
      .map(([pieces, order]) =>
        Buffer.concat(order.map((i) => pieces[i % pieces.length] ?? Buffer.of())),
      );
    fc.assert(
      fc.property(alike, alike, (files, before) => {
        expect(unpacked(files, before).bytes.equals(files)).toBe(true);
      }),
    );
  });

  it('holds once what repeats, from however far away', () => {
    const text = (seed: string, many: number) =>
      Buffer.from(Array.from({ length: many }, (_, i) => digest(`${seed} ${String(i)}`)).join(''));
    const page = text('page', 20);
    const far = Buffer.concat([page, text('far', 5000), page]);
    const { sent, bytes } = unpacked(far, page);
    expect(bytes.equals(far)).toBe(true);
    expect(sent.literals.length).toBeLessThan(far.length - 2 * page.length + 100);
    expect(sent.literals.length).toBeGreaterThan(200_000);
  });
});

/** Five bundles of a site, and the bytes of each file they hold. */
function site(): { release: Release; sent: Map<string, string>; files: Map<string, string> } {
  const page = (name: string) => `${name} ${'of a site whose pages are alike. '.repeat(20)}${name}`;
  const names = { shared: ['', 'note/'], locked: ['locked/a/', 'locked/b/'], cold: ['cold/a/'] };
  const sent = new Map<string, string>();
  /** But staff's. */
  const files = new Map<string, string>();
  let before = Buffer.of() as Buffer;
  const bundles = Object.entries({ ...names, rest: ['about/'], staff: ['desk/'] }).map(
    ([name, paths]): Bundle => {
      const bodies = paths.map((path) => Buffer.from(page(path)));
      for (const path of name === 'staff' ? [] : paths) files.set(SCOPE + path, page(path));
      const data = Buffer.concat(bodies);
      const text = JSON.stringify({
        files: paths.map((path, i) => [path, bodies[i]?.length, 0]),
        ...{ hash: digest(data), ...pack(data, name === 'staff' ? Buffer.of() : before) },
      });
      if (name === 'shared') before = data;
      sent.set(`${SCOPE}${name}.json`, text);
      return { name, path: `${name}.json`, hash: digest(text), bytes: data.length };
    },
  );
  const [shared, ...others] = bundles;
  if (!shared) throw new Error('no bundle');
  const release: Release = {
    ...{ scope: SCOPE, number: 1, version: 'v', bundles: [shared, ...others] },
    headers: [{ 'content-type': 'text/html' }],
  };
  return { release, sent, files };
}

describe('a release', () => {
  let stores: Map<string, Map<string, Response>>;
  let asked: string[];
  let quota: number;
  /** What becomes of the request that is the nth, from 0. */
  let fate: (nth: number, url: string) => 'answer' | 'cut' | 'spoil' | 'gone';
  const { release, sent, files } = site();
  const name = cacheOf(release);

  beforeEach(() => {
    stores = new Map();
    asked = [];
    quota = 1e9;
    fate = () => 'answer';
    const urlOf = (key: string | URL) => (typeof key === 'string' ? key : key.href);
    const open = (cacheName: string) => {
      const store = stores.get(cacheName) ?? new Map<string, Response>();
      stores.set(cacheName, store);
      return Promise.resolve({
        match: (key: string | URL) => Promise.resolve(store.get(urlOf(key))?.clone()),
        delete: (key: string | URL) => Promise.resolve(store.delete(urlOf(key))),
        put: async (key: string | URL, response: Response) => {
          const body = await response.clone().text();
          quota -= body.length;
          if (quota < 0) throw new DOMException('', 'QuotaExceededError');
          store.set(urlOf(key), response);
        },
      });
    };
    vi.stubGlobal('location', new URL(`${SCOPE}sw.js`));
    vi.stubGlobal('caches', {
      open,
      has: (cacheName: string) => Promise.resolve(stores.has(cacheName)),
      keys: () => Promise.resolve([...stores.keys()]),
      match: (key: string, { cacheName }: { cacheName: string }) =>
        Promise.resolve(stores.get(cacheName)?.get(key)?.clone()),
    });
    vi.stubGlobal('navigator', {
      storage: { estimate: () => Promise.resolve({ quota, usage: 0 }) },
    });
    vi.stubGlobal('fetch', (url: string) => {
      const what = fate(asked.length, url);
      asked.push(url.slice(SCOPE.length));
      if (what === 'cut') return Promise.reject(new TypeError('Failed to fetch'));
      const body = what === 'spoil' ? 'other bytes' : sent.get(url);
      return Promise.resolve(new Response(body ?? null, { status: what === 'gone' ? 404 : 200 }));
    });
  });
  afterEach(() => {
    vi.unstubAllGlobals();
  });

  /** What the cache holds, but what the worker remembers there. */
  const held = async () => {
    const pages = [...(stores.get(name) ?? [])].filter(([url]) => !url.includes('?'));
    const read = pages.map(async ([url, answer]) => [url, await answer.clone().text()] as const);
    return new Map(await Promise.all(read));
  };
  const keptFor = async (guides: string[]) => {
    const usable = vi.fn();
    const error: unknown = await keep(release, guides, usable).then(
      () => undefined,
      (reason: unknown) => reason,
    );
    return { error, usable: usable.mock.calls.length > 0 };
  };

  it('is kept in one request a bundle, the reader’s guide first, every byte as published', async () => {
    let before: string[] = [];
    await keep(
      release,
      ['cold'],
      () => (before = [...(stores.get(name) ?? [])].map(([url]) => url)),
    );
    expect(asked.slice(0, 2).toSorted()).toEqual(['cold.json', 'shared.json']);
    expect(asked.toSorted()).toEqual(['cold.json', 'locked.json', 'rest.json', 'shared.json']);
    // Before the others were asked for, the guide worked.
    expect(before).toEqual(expect.arrayContaining([SCOPE, `${SCOPE}note/`, `${SCOPE}cold/a/`]));
    expect(await held()).toEqual(files);
    expect(await missing(name)).toEqual(['staff']);
    expect([...(stores.get(name)?.keys() ?? [])]).toHaveLength(files.size + 1);
    await keep(release, ['cold'], () => undefined);
    expect(asked).toHaveLength(4);
    expect([await isWhole(name), await isWhole(name, true)]).toEqual([true, false]);
    await keep(release, ['staff'], () => undefined, true);
    expect(asked.slice(4)).toEqual(['staff.json']);
    expect([await isWhole(name, true), (await held()).size]).toEqual([true, files.size + 1]);
  });

  it.each([0, 1, 2, 3])('cut at request %i, goes on where it stopped', async (cut) => {
    fate = (nth) => (nth >= cut ? 'cut' : 'answer');
    const first = await keptFor(['cold']);
    expect(first.error).toBeInstanceOf(TypeError);
    expect(first.usable).toBe(cut >= 2);
    const left = ((await missing(name)) ?? []).filter((one) => one !== 'staff');
    // Whole bundles and nothing else; without the shared one, none.
    const whole = ['shared', 'locked', 'cold', 'rest'].filter((one) => !left.includes(one));
    expect(whole.length).toBeLessThanOrEqual(cut);
    if (cut >= 2) expect(whole).toEqual(expect.arrayContaining(['shared', 'cold']));
    for (const [url, body] of await held()) expect(body).toBe(files.get(url));
    fate = () => 'answer';
    asked.length = 0;
    expect(await keptFor(['cold'])).toEqual({ error: undefined, usable: true });
    expect(asked.toSorted()).toEqual(left.map((one) => `${one}.json`).toSorted());
    expect(await held()).toEqual(files);
  });

  it.each(['shared', 'cold', 'locked', 'rest'])(
    'with a wrong byte in %s, has nothing of that bundle',
    async (wrong) => {
      fate = (_, url) => (url.endsWith(`${wrong}.json`) ? 'spoil' : 'answer');
      const { error, usable } = await keptFor(['cold']);
      expect(error).toBeInstanceOf(Altered);
      expect(usable).toBe(wrong === 'locked' || wrong === 'rest');
      expect(await missing(name)).toContain(wrong);
      for (const [url, body] of await held()) expect(body).toBe(files.get(url));
      // The browser's own cache may hold the wrong one for a year: asked past it.
      expect(asked.filter((path) => path === `${wrong}.json`)).toHaveLength(2);
    },
  );

  it('does not take a bundle that is not what it says inside', async () => {
    const [shared, ...others] = release.bundles;
    const text = (sent.get(`${SCOPE}shared.json`) ?? '').replace('alike', 'alikE');
    const forged = { ...shared, path: 'forged.json', hash: digest(text) };
    sent.set(`${SCOPE}forged.json`, text);
    const error: unknown = await keep(
      { ...release, bundles: [forged, ...others] },
      [],
      () => undefined,
    ).catch((reason: unknown) => reason);
    expect(error).toBeInstanceOf(Altered);
    expect((await held()).size).toBe(0);
  });

  it('gone from the host, is no damaged one', async () => {
    fate = (_, url) => (url.endsWith('rest.json') ? 'gone' : 'answer');
    const { error, usable } = await keptFor(['cold']);
    expect(error).not.toBeInstanceOf(Altered);
    expect(usable).toBe(true);
  });

  it('on a device too full for all, keeps the guide; on one too full for that, asks for nothing', async () => {
    quota = 5000;
    expect(await keptFor(['cold'])).toEqual({ error: expect.any(Full) as Full, usable: true });
    expect(await missing(name)).toEqual(['locked', 'rest', 'staff']);
    asked.length = 0;
    stores.clear();
    quota = 500;
    expect(await keptFor(['cold'])).toEqual({ error: expect.any(Full) as Full, usable: false });
    expect(asked).toEqual([]);
  });

  it('is told as too large where room runs out meanwhile', async () => {
    vi.stubGlobal('navigator', {});
    quota = 4000;
    expect((await keptFor(['cold'])).error).toBeInstanceOf(Full);
    for (const [url, body] of await held()) expect(body).toBe(files.get(url));
  });
});
