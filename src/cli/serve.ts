import { createHash } from 'node:crypto';
import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { extname, join, relative, resolve, sep } from 'node:path';
import { TYPES, headersFor, parseHeaders, type HeaderRule } from '../headers.ts';

/** A running server. */
export interface Served {
  /** The site's address, with a slash at its end. */
  readonly url: string;
  /** Stops listening and drops open connections. */
  readonly close: () => Promise<void>;
}

export interface ServeOptions {
  /** Folder of the built site. */
  readonly dir: string;
  /** TCP port; 0 takes any free one. */
  readonly port: number;
  /** Address to listen on. The default, loopback, is not reachable from other machines. */
  readonly host?: string;
}

/** Headers of a site that brings no `_headers` file. */
const PLAIN_RULES: HeaderRule[] = [
  { pattern: '/*', headers: [['X-Content-Type-Options', 'nosniff']] },
];

/** Names under `_astro/` carry a hash of their content; everything else is asked for again. */
function cacheControl(path: string): string {
  return path.startsWith('/_astro/') ? 'public, max-age=31536000, immutable' : 'no-cache';
}

/** What says that a file is not there, or no file; any other trouble with one is told as 500. */
const ABSENT = new Set(['ENOENT', 'ENOTDIR', 'EISDIR', 'ENAMETOOLONG']);

async function bytesOf(file: string): Promise<Buffer | undefined> {
  try {
    return await readFile(file);
  } catch (error) {
    if (error instanceof Error && 'code' in error && ABSENT.has(String(error.code))) return;
    throw error;
  }
}

/** Does a list such as `gzip, br;q=0.5` take a coding (RFC 9110, section 12.5.3)? */
function accepts(list: string, coding: string): boolean {
  const [, weight] = list
    .split(/\s*,\s*/)
    .map((one) => one.split(/\s*;\s*q=/))
    .find(([name]) => name === coding) ?? ['', 0];
  return Number(weight ?? 1) > 0;
}

/** A compressed copy that the reader takes, or the file itself, and the name of its coding. */
async function bestOf(file: string, list: string) {
  for (const [coding, suffix] of [
    ['br', '.br'],
    ['gzip', '.gz'],
  ] as const) {
    const body = accepts(list, coding) && (await bytesOf(file + suffix));
    if (body) return { body, coding };
  }
  const body = await bytesOf(file);
  return body && { body };
}

/**
 * What a request line asks for, in any of its forms (RFC 9112, section 3.2): the path with its
 * escapes decoded, '' where that can be no file's, and the query as it was.
 */
function askedFor(target: string): { readonly path: string; readonly query: string } {
  const [, given, query = ''] = /^(?:https?:\/\/[^/?]*)?([^?]*)(.*)$/i.exec(target) ?? [];
  try {
    const path = decodeURIComponent(given === '' ? '/' : (given ?? ''));
    return { path: /^\/[^\0\\]*$/.test(path) ? path : '', query };
  } catch {
    return { path: '', query };
  }
}

/**
 * Serves a built site: the compressed copies beside its files by content negotiation, the headers of its `_headers`
 * file, folder addresses, its 404 page. Each answer is of the files as they are then, read whole,
 * so that a build may run meanwhile; ranges are not given. Nothing about a request is written anywhere.
 *
 * @throws the Node error of `listen` (`EADDRINUSE` when the port is taken), and an Error when the
 * folder holds no `index.html`.
 */
export async function serve({ dir, port, host = '127.0.0.1' }: ServeOptions): Promise<Served> {
  const root = resolve(dir);
  if (!existsSync(join(root, 'index.html')))
    throw new Error(`${dir} holds no built site: run "npm run build" first.`);
  let rules = PLAIN_RULES;
  let notFound: Buffer = Buffer.from('Not found');
  /** While a build has taken these away, what was known last still stands. */
  const refresh = async (): Promise<void> => {
    const headers = await bytesOf(join(root, '_headers'));
    if (headers) rules = parseHeaders(headers.toString());
    notFound = (await bytesOf(join(root, '404.html'))) ?? notFound;
  };
  await refresh();

  const answer = async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const { path, query } = askedFor(request.url ?? '');
    const file = join(root, path);
    /** As the site spells it, with nothing left to resolve. */
    const plain = `/${relative(root, file).split(sep).map(encodeURIComponent).join('/')}`;
    await refresh();
    for (const [name, value] of headersFor(rules, path || '/')) response.setHeader(name, value);
    const send = (status: number, body: Buffer, headers: Readonly<Record<string, string>> = {}) =>
      response.writeHead(status, { 'Content-Length': body.length, ...headers }).end(body);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      send(405, Buffer.of(), { Allow: 'GET, HEAD' });
      return;
    }
    const page = path.endsWith('/') ? join(file, 'index.html') : file;
    // Only files of known kinds: not `_headers`, however it is spelled, and no copy by its own name.
    const kind = `${page}${sep}`.startsWith(root + sep) ? TYPES.get(extname(page)) : undefined;
    const found = path && kind && (await bestOf(page, request.headers['accept-encoding'] ?? ''));
    if (found) {
      const tag = `"${createHash('sha256').update(found.body).digest('base64url')}"`;
      response.setHeader('Cache-Control', cacheControl(plain));
      response.setHeader(
        'Content-Type',
        `${kind}${kind.startsWith('image/') ? '' : ';charset=utf-8'}`,
      );
      if (found.coding) response.setHeader('Content-Encoding', found.coding);
      response.setHeader('Vary', 'Accept-Encoding').setHeader('ETag', tag);
      const known: readonly string[] =
        request.headers['if-none-match']?.match(/"[^"]*"|^\*$/g) ?? [];
      if (known.includes(tag) || known.includes('*')) response.writeHead(304).end();
      else send(200, found.body);
      return;
    }
    // With its slash missing, relative links of a folder's page would point one level too high.
    if (path && !path.endsWith('/') && plain !== '/..' && existsSync(join(file, 'index.html')))
      send(308, Buffer.of(), { Location: `${plain}/${query}` });
    // What is missing today may be there tomorrow, whatever its name.
    else
      send(404, notFound, {
        'Cache-Control': 'no-cache',
        'Content-Type': 'text/html;charset=utf-8',
      });
  };

  const server = createServer((request, response) => {
    answer(request, response).catch(() => {
      if (!response.headersSent) response.writeHead(500);
      response.end();
    });
  });
  await new Promise<void>((listening, failed) => {
    server.on('error', failed);
    server.listen(port, host, listening);
  });
  const address = server.address();
  const bound = typeof address === 'object' && address !== null ? address.port : port;
  const name = host.includes(':') ? `[${host}]` : host;
  return {
    url: `http://${name}:${String(bound)}/`,
    close: () =>
      new Promise((closed, failed) => {
        server.close((error) => {
          if (error) failed(error);
          else closed();
        });
        server.closeAllConnections();
      }),
  };
}
