import { mkdir, mkdtemp, rm, stat, utimes, writeFile } from 'node:fs/promises';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { brotliDecompressSync, gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { precompress } from '../../../src/site/build/precompress.ts';
import { serve, type Served } from '../../../src/cli/serve.ts';
import { ask as askAt } from './ask.ts';

const PAGE = `<!doctype html><title>Page</title>${'<p>The same words again. </p>'.repeat(40)}`;

let dir: string;
let site: Served;

beforeAll(async () => {
  dir = await mkdtemp(join(tmpdir(), 'hobnote-serve-'));
  await mkdir(join(dir, 'guide', 'danger'), { recursive: true });
  await mkdir(join(dir, '_astro'));
  await writeFile(join(dir, 'index.html'), PAGE);
  await writeFile(join(dir, 'guide', 'danger', 'index.html'), PAGE);
  await writeFile(join(dir, '404.html'), '<!doctype html><title>Lost</title>');
  await writeFile(join(dir, '_astro', 'a.Hash1.js'), 'export const a = "a";'.repeat(30));
  await writeFile(join(dir, '_headers'), '/*\n  X-Everywhere: yes\n');
  await precompress(dir);
  site = await serve({ dir, port: 0 });
});

afterAll(async () => {
  await site.close();
  await rm(dir, { recursive: true });
});

const ask = (path: string, headers: Record<string, string> = {}, method = 'GET') =>
  askAt(site.url, path, headers, method);

describe('serve', () => {
  it('serves a folder as its index page', async () => {
    const { status, headers, body } = await ask('/guide/danger/');
    expect(status).toBe(200);
    expect(headers['content-type']).toBe('text/html;charset=utf-8');
    expect(body.toString()).toBe(PAGE);
  });

  it('sends a folder without its slash to the address with it, query kept', async () => {
    const { status, headers } = await ask('/guide/danger?from=print');
    expect(status).toBe(308);
    expect(headers['location']).toBe('/guide/danger/?from=print');
  });

  it('never redirects to another host', async () => {
    const { headers } = await ask('//guide/danger');
    expect(headers['location'] ?? '/').toMatch(/^\/(?!\/)/);
  });

  it.each([
    ['br', brotliDecompressSync],
    ['gzip', gunzipSync],
  ])('sends the %s copy to whom accepts it', async (encoding, unpack) => {
    const { headers, body } = await ask('/', { 'accept-encoding': encoding });
    expect(headers['content-encoding']).toBe(encoding);
    expect(headers['vary']).toBe('Accept-Encoding');
    expect(body.length).toBeLessThan(PAGE.length / 2);
    expect(unpack(body).toString()).toBe(PAGE);
  });

  it('answers 304 to whom has the page already', async () => {
    const first = await ask('/');
    const second = await ask('/', { 'if-none-match': String(first.headers['etag']) });
    expect(second.status).toBe(304);
  });

  it('lets only hashed names be kept without asking again', async () => {
    expect((await ask('/')).headers['cache-control']).toBe('no-cache');
    expect((await ask('/_astro/a.Hash1.js')).headers['cache-control']).toContain('immutable');
  });

  it('puts the headers of _headers on pages, files, redirects and the 404 page', async () => {
    for (const path of ['/', '/_astro/a.Hash1.js', '/guide/danger', '/nothing/'])
      expect((await ask(path)).headers['x-everywhere'], path).toBe('yes');
  });

  it.each([
    '/nothing/',
    '/%',
    '/%00',
    '/_headers',
    '/../../etc/passwd',
    '/%2e%2e/%2e%2e/etc/passwd',
  ])('answers %s with the 404 page', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body.toString()).toContain('Lost');
  });

  it('refuses other methods', async () => {
    const { status, headers } = await ask('/', {}, 'POST');
    expect(status).toBe(405);
    expect(headers['allow']).toBe('GET, HEAD');
  });

  it('says so when the port is taken', async () => {
    const blocker = createServer();
    await new Promise<void>((ready) => blocker.listen(0, '127.0.0.1', ready));
    const address = blocker.address();
    const port = typeof address === 'object' && address !== null ? address.port : 0;
    await expect(serve({ dir, port })).rejects.toMatchObject({ code: 'EADDRINUSE' });
    await new Promise((closed) => blocker.close(closed));
  });

  it('says what to do when nothing is built', async () => {
    await expect(serve({ dir: join(dir, 'guide'), port: 0 })).rejects.toThrow('npm run build');
  });
});

describe('precompress', () => {
  it('makes a copy again when its original has changed', async () => {
    const file = join(dir, 'changing.txt');
    await writeFile(file, 'before '.repeat(50));
    await precompress(dir);
    const before = await stat(`${file}.br`);
    await writeFile(file, 'after the change '.repeat(50));
    await utimes(file, new Date(), new Date(before.mtimeMs + 60_000));
    await precompress(dir);
    const after = await stat(`${file}.br`);
    expect(after.mtimeMs).toBeGreaterThan(before.mtimeMs);
  });

  it('leaves out a copy that would not be smaller', async () => {
    await writeFile(join(dir, 'tiny.txt'), 'x');
    await precompress(dir);
    await expect(stat(join(dir, 'tiny.txt.br'))).rejects.toMatchObject({ code: 'ENOENT' });
  });
});
