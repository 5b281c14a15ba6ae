import { afterEach, beforeEach, expect, it, vi } from 'vitest';
import { checked, remembered } from '../../../src/offline/worker/memory.ts';

/** What the cache has under every key. */
let note = '';
beforeEach(() => {
  vi.stubGlobal('location', { href: 'https://range.example/sw.js' });
  vi.stubGlobal('caches', { match: () => Promise.resolve(new Response(note)) });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

it.each(['', '{', 'null', '[]', '"x"', '{"least":"6","pages":[]}'])(
  'a note that reads %j is as good as none: no page fails for it',
  async (text) => {
    note = text;
    expect(await remembered('a')).toBeUndefined();
    expect(await checked('a')).toBe(0);
  },
);

it('a time that is still to come tells nothing: a clock was set back', async () => {
  note = String(Date.now() + 2 * 86_400_000);
  expect(await checked('a')).toBe(0);
  note = String(Date.now() - 60_000);
  expect(await checked('a')).toBe(Number(note));
});
