import { createServer, request } from 'node:http';
import type { AddressInfo } from 'node:net';
import { buffer } from 'node:stream/consumers';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { CHROMIUM_FLAGS, wholeChromium as program } from '../../.config/browsers.ts';
import { serve } from '../../src/cli/serve.ts';
import { kept } from '../browser/support/releases.ts';
import type { Row } from './row.ts';
import { SLOW_4G } from './slow-phone.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
/** Bytes that take the line at a time. */
const PIECE = 4096;

/** A site behind a slow line; DevTools slow a page's requests, not those of its worker. */
async function slowed(site: string) {
  const sent = { requests: 0, bytes: 0 };
  let free = 0;
  const server = createServer(({ url = '', headers }, to) => {
    const pass = async (): Promise<void> => {
      await sleep(SLOW_4G.latency);
      const onward = request(new URL(url, site), { headers });
      const answer = new Promise<Parameters<typeof buffer>[0] & { headers: object }>((done) =>
        onward.once('response', done).end(),
      );
      const body = await buffer(await answer);
      to.writeHead(200, { ...(await answer).headers });
      sent.requests += 1;
      sent.bytes += body.length;
      for (let at = 0; at < body.length; at += PIECE) {
        const piece = body.subarray(at, at + PIECE);
        const now = performance.now();
        free = Math.max(free, now) + (piece.length / SLOW_4G.downloadThroughput) * 1000;
        await sleep(free - now);
        to.write(piece);
      }
      to.end();
    };
    void pass();
  });
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const { port } = server.address() as AddressInfo;
  const close = () => {
    server.closeAllConnections();
    server.close();
  };
  return { url: `http://127.0.0.1:${String(port)}/`, sent, close };
}

/** From the first page of a guide until it works with no network, and until all of the site does. */
export async function benchOffline(): Promise<Row[]> {
  const site = await serve({ dir: DIST, port: 0 });
  const line = await slowed(site.url);
  const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
  try {
    const page = await browser.newPage();
    await page.goto(`${line.url}door-locked/danger/`, { waitUntil: 'load' });
    const before = { ...line.sent };
    const start = performance.now();
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    const own = (performance.now() - start) / 1000;
    await kept(page);
    const all = (performance.now() - start) / 1000;
    const note = 'slow 4G, from the first page’s load';
    const [requests, bytes] = [
      line.sent.requests - before.requests,
      line.sent.bytes - before.bytes,
    ];
    return [
      { name: 'the guide works offline', value: own, unit: 's', ceiling: 1.5, note },
      { name: 'all of the site does', value: all, unit: 's', ceiling: 3, note },
      { name: 'requests for that', value: requests, unit: '', ceiling: 13 },
      { name: 'sent for that', value: bytes, unit: 'B', ceiling: 260_000, note: 'brotli' },
    ];
  } finally {
    await browser.close();
    line.close();
    await site.close();
  }
}
