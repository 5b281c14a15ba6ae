import { createServer, request, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { serve, type Served } from '../../../src/cli/serve.ts';

/** What becomes of a request: answered, cut without a word, never answered, or answered with other bytes. */
export type Fate = 'answer' | 'cut' | 'hang' | 'spoil';

/** A web address whose site, folder and faults a test chooses while it runs. */
export interface Origin {
  /** The site's address, a slash at its end. */
  readonly url: string;
  /** Paths asked for, in order, the folder left out. */
  readonly asked: string[];
  /** Those that a script asked for (Fetch Metadata, `Sec-Fetch-Dest: empty`), not the page. */
  readonly fetched: string[];
  /** Decides about each request, at once or later; at first all are answered. */
  fate: (path: string) => Fate | Promise<Fate>;
  /** Puts another built folder in place of the one that is served. */
  release(dir: string): Promise<void>;
  close(): Promise<void>;
}

function pass(from: IncomingMessage, to: ServerResponse, url: URL, spoil: boolean): void {
  const headers = { ...from.headers, host: url.host };
  const onward = request(url, { method: from.method ?? 'GET', headers }, (answer) => {
    if (spoil) {
      answer.resume();
      to.writeHead(200, { 'Content-Type': answer.headers['content-type'] }).end('other bytes');
      return;
    }
    to.writeHead(answer.statusCode ?? 502, answer.headers);
    answer.pipe(to);
  });
  onward.on('error', () => to.destroy());
  from.pipe(onward);
}

/**
 * Serves a built site at an address of its own.
 *
 * @param folder path the site lies under, `/some/folder/`; outside it nothing is found
 */
export async function makeOrigin(dir: string, folder = '/'): Promise<Origin> {
  let site: Served = await serve({ dir, port: 0 });
  const server = createServer((from, to) => {
    const path = from.url ?? '/';
    if (!path.startsWith(folder)) {
      to.writeHead(404).end('outside');
      return;
    }
    const inner = path.slice(folder.length - 1);
    origin.asked.push(inner);
    if (from.headers['sec-fetch-dest'] === 'empty') origin.fetched.push(inner);
    void Promise.resolve(origin.fate(inner)).then((fate) => {
      if (fate === 'cut') to.destroy();
      else if (fate !== 'hang') pass(from, to, new URL(inner, site.url), fate === 'spoil');
    });
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  const origin: Origin = {
    url: `http://127.0.0.1:${String(port)}${folder}`,
    asked: [],
    fetched: [],
    fate: () => 'answer',
    async release(next) {
      await site.close();
      site = await serve({ dir: next, port: 0 });
    },
    async close() {
      const closed = new Promise((done) => server.close(done));
      server.closeAllConnections();
      await closed;
      await site.close();
    },
  };
  return origin;
}
