import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { firm, releases } from '../../../src/content/load.ts';
import { closeSite } from '../../../src/site/build/close.ts';

it('writes what a firm that closes publishes', async () => {
  const dir = await mkdtemp(join(tmpdir(), 'hobnote-closed-'));
  const read = (name: string) => readFile(join(dir, name), 'utf8');
  try {
    await closeSite(dir);
    expect(JSON.parse(await read('recall.json'))).toEqual({
      ...{ least: releases().length + 1, pages: [] },
    });
    expect(await read('sw.js')).toMatch(/unregister/);
    // It answers nothing: what is kept is no longer shown.
    expect(await read('sw.js')).not.toMatch(/respondWith|`fetch`|"fetch"/);
    for (const name of ['index.html', '404.html'])
      expect(await read(name)).toContain(`tel:${firm().phone.dial}`);
    expect(await read('_headers')).toContain('/recall.json\n  Cache-Control: no-store');
  } finally {
    await rm(dir, { recursive: true });
  }
});
