import { existsSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import { join, resolve, sep } from 'node:path';
import sirv from 'sirv';
import { headersFor, parseHeaders, type HeaderRule } from './headers.ts';

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

/**
 * Where a folder asked for without its slash lives, or undefined. With the slash missing, relative
 * links of the page would point one level too high.
 */
function folderAddress(root: string, path: string, query: string): string | undefined {
  if (path.endsWith('/')) return undefined;
  const index = resolve(root, `.${path}`, 'index.html');
  if (!index.startsWith(root + sep) || !existsSync(index)) return undefined;
  return `${path.replace(/^\/+/, '/')}/${query}`;
}

function decoded(path: string): string | undefined {
  try {
    return decodeURIComponent(path);
  } catch {
    return undefined;
  }
}

/**
 * Serves a built site: the compressed copies beside its files by content negotiation, the headers of its `_headers`
 * file, folder addresses, its 404 page. Nothing about a request is written anywhere.
 *
 * @throws the Node error of `listen` (`EADDRINUSE` when the port is taken), and an Error when the
 * folder holds no `index.html`.
 */
export async function serve({ dir, port, host = '127.0.0.1' }: ServeOptions): Promise<Served> {
  const root = resolve(dir);
  if (!existsSync(join(root, 'index.html')))
    throw new Error(`${dir} holds no built site: run "npm run build" first.`);
  const read = (name: string) => readFile(join(root, name), 'utf8').catch(() => undefined);
  const headersFile = await read('_headers');
  const rules = headersFile === undefined ? PLAIN_RULES : parseHeaders(headersFile);
  const notFound = (await read('404.html')) ?? 'Not found';
  const files = sirv(root, { etag: true, brotli: true, gzip: true });

  const answer = (request: IncomingMessage, response: ServerResponse): void => {
    const [target = '/', ...rest] = (request.url ?? '/').split('?');
    const query = rest.length > 0 ? `?${rest.join('?')}` : '';
    const path = decoded(target);
    response.setHeader('Cache-Control', cacheControl(target));
    for (const [name, value] of headersFor(rules, path ?? target)) response.setHeader(name, value);
    if (request.method !== 'GET' && request.method !== 'HEAD') {
      response.writeHead(405, { Allow: 'GET, HEAD' }).end();
      return;
    }
    const missing = (): void => {
      // What is missing today may be there tomorrow, whatever its name.
      response.setHeader('Cache-Control', 'no-cache');
      response.writeHead(404, { 'Content-Type': 'text/html;charset=utf-8' }).end(notFound);
    };
    if (path === undefined || path.includes('\0') || path === '/_headers') {
      missing();
      return;
    }
    const folder = folderAddress(root, path, query);
    if (folder === undefined) files(request, response, missing);
    else response.writeHead(308, { Location: encodeURI(folder) }).end();
  };

  const server = createServer(answer);
  await new Promise<void>((listening, failed) => {
    server.once('error', failed);
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
