import { mkdir, mkdtemp, readFile, rm, stat, symlink, writeFile } from 'node:fs/promises';
import { connect, createServer } from 'node:net';
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

/** A request written by hand: the status and the whole answer, up to the end of the connection. */
function raw(line: string, ...fields: readonly string[]): Promise<string> {
  const { hostname, port } = new URL(site.url);
  return new Promise((done, failed) => {
    const socket = connect(Number(port), hostname);
    let text = '';
    socket.setEncoding('latin1').on('data', (data: string) => (text += data));
    socket.on('end', () => done(text)).on('error', failed);
    socket.write(
      `${line}\r\nHost: a\r\nConnection: close\r\n${fields.map((f) => `${f}\r\n`).join('')}\r\n`,
    );
  });
}

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
    ...['/nothing/', '/%', '/%00', '/_headers', '/../../etc/passwd', '/%2e%2e/%2e%2e/etc/passwd'],
    ...[
      '/_headers/',
      '//_headers',
      '/%5fheaders',
      '/./_headers',
      '/guide/../_headers',
      '/_HEADERS',
    ],
    ...[
      '/_headers?x',
      '/_headers%2f',
      '/_headers%00',
      '/_headers.',
      '/_headers.br',
      '/_headers.gz',
    ],
    ...[
      '/%0a',
      '/index.html%0a',
      '/index.html/',
      '/%c0%ae%c0%ae/',
      '/%2e%2e%2fetc%2fpasswd',
      '/\\guide',
    ],
    ...['/index.html.br', `/${'a'.repeat(4000)}`, `/${'a/'.repeat(4000)}`, '/index.html/danger/'],
    ...['/_astro', '/_astro/', '/guide', '/guide/danger/index', '/.git/config'],
  ])('answers %s with the 404 page', async (path) => {
    const { status, body } = await ask(path);
    expect(status).toBe(404);
    expect(body.toString()).toContain('Lost');
  });

  // RFC 9110, section 14.2: a server may ignore the field; ranges that were not understood ended it.
  it.each([
    ...['bytes=5-2', 'bytes=-5', 'bytes=abc', 'items=0-1', 'bytes=0-0,2-3', 'bytes=99999999999-'],
    ...['bytes=0-99999999999999999999', 'bytes=--1', 'bytes=', '', 'bytes=0x1-', 'bytes=NaN-1e9'],
  ])('sends the whole file whatever range is asked for: %j', async (range) => {
    const { status, body } = await ask('/', { range });
    expect([status, body.toString()]).toEqual([200, PAGE]);
  });

  it('answers with what is there now: gone, changed and new files and headers', async () => {
    const here = await mkdtemp(join(tmpdir(), 'hobnote-rebuilt-'));
    const write = (name: string, text: string) => writeFile(join(here, name), text);
    await write('index.html', 'short');
    await write('gone.txt', 'here');
    const own = await serve({ dir: here, port: 0 });
    const get = async (path: string) => {
      const { status, body, headers } = await askAt(own.url, path);
      return [status, body.toString(), headers['x-build']];
    };
    try {
      await write('index.html', 'a longer page');
      await write('new.js', 'new');
      await write('404.html', 'Lost');
      await write('_headers', '/*\n  X-Build: 2\n');
      await rm(join(here, 'gone.txt'));
      expect(await get('/')).toEqual([200, 'a longer page', '2']);
      expect(await get('/new.js')).toEqual([200, 'new', '2']);
      expect(await get('/gone.txt')).toEqual([404, 'Lost', '2']);
      // In the middle of a build: the headers known last still stand.
      await rm(here, { recursive: true });
      expect(await get('/')).toEqual([404, 'Lost', '2']);
      await mkdir(here);
      await write('index.html', 'back');
      expect(await get('/')).toEqual([200, 'back', '2']);
    } finally {
      await own.close();
      await rm(here, { recursive: true });
    }
  });

  it('answers a file that cannot be read, and goes on', async () => {
    await mkdir(join(dir, 'folder.html'));
    await symlink('loop.html', join(dir, 'loop.html'));
    expect((await ask('/folder.html')).status).toBe(404);
    expect((await ask('/loop.html')).status).toBe(500);
    expect((await ask('/')).status).toBe(200);
  });

  it.each([
    ['GET http://other.example/guide/danger/ HTTP/1.1', 200],
    ['GET http://other.example HTTP/1.1', 200],
    ['GET HTTP://other.example/_headers HTTP/1.1', 404],
    ['GET http://other.example/guide/danger?x=%20 HTTP/1.1', 308],
    ['OPTIONS * HTTP/1.1', 405],
    ['GET * HTTP/1.1', 404],
    ['GET http://[ HTTP/1.1', 200],
    ['GET /%0a HTTP/1.1', 404],
    ['GET /index%0a HTTP/1.1', 404],
    ['GET /?%0d%0aX-Evil:%201 HTTP/1.1', 200],
    ['GET /guide/danger?%0d%0aX-Evil:%201 HTTP/1.1', 308],
    ['PUT /%0a HTTP/1.1', 405],
  ])('answers %j with %i and all headers', async (line, status) => {
    const text = await raw(line);
    expect(text).toMatch(new RegExp(`^HTTP/1.1 ${String(status)} `));
    expect(text.toLowerCase()).toContain('x-everywhere: yes');
    expect(text).not.toMatch(/^X-Evil/im);
    expect((await ask('/')).status).toBe(200);
  });

  it('leads to a folder by its plain address, and repeats the query as it was', async () => {
    for (const [path, to] of [
      ['/guide/danger?x=%20%2525', '/guide/danger/?x=%20%2525'],
      ['///guide//danger', '/guide/danger/'],
      ['/x/..//guide/danger', '/guide/danger/'],
      ['/guide/%64anger?//evil.example', '/guide/danger/?//evil.example'],
    ] as const)
      expect((await ask(path)).headers['location'], path).toBe(to);
  });

  it('says the length of what it sends, to HEAD too, and knows a page by any of its tags', async () => {
    const { headers, body } = await ask('/', {}, 'HEAD');
    expect(headers['content-length']).toBe(String(PAGE.length));
    expect(body).toHaveLength(0);
    const tag = String(headers['etag']);
    // RFC 9110, section 13.1.2.
    for (const known of [`"other", ${tag}`, '*', `W/${tag}`])
      expect((await ask('/', { 'if-none-match': known })).status, known).toBe(304);
    const packed = await ask('/', { 'if-none-match': tag, 'accept-encoding': 'br' });
    expect(packed.status, 'another coding is another representation').toBe(200);
    expect((await ask('/', { 'accept-encoding': 'br;q=0, gzip;q=0' })).body.toString()).toBe(PAGE);
    expect((await ask('/', { 'accept-encoding': 'brx' })).body.toString()).toBe(PAGE);
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
  it('leaves out a copy that would not be smaller', async () => {
    await writeFile(join(dir, 'tiny.txt'), 'x');
    await precompress(dir);
    await expect(stat(join(dir, 'tiny.txt.br'))).rejects.toMatchObject({ code: 'ENOENT' });
  });

  it('takes the copies of what an earlier build had alike, and of nothing else', async () => {
    const [before, now] = [join(dir, 'before'), join(dir, 'now')];
    for (const folder of [before, now]) {
      await mkdir(folder);
      await writeFile(join(folder, 'same.txt'), PAGE);
    }
    await writeFile(join(before, 'other.txt'), `${PAGE} Before.`);
    await writeFile(join(now, 'other.txt'), `${PAGE} Now.`);
    for (const name of ['same', 'other']) await writeFile(join(before, `${name}.txt.br`), 'taken');
    await precompress(now, before);
    expect(await readFile(join(now, 'same.txt.br'), 'utf8')).toBe('taken');
    expect(gunzipSync(await readFile(join(now, 'same.txt.gz'))).toString()).toBe(PAGE);
    expect(brotliDecompressSync(await readFile(join(now, 'other.txt.br'))).toString()).toContain(
      'Now.',
    );
  });
});
