import { brotliCompressSync } from 'node:zlib';
import type { Browser, Page } from '@playwright/test';

/** One thing a page loads; bytes of its body as sent. */
export interface Load {
  readonly url: string;
  /** Kind in the words of the Chrome DevTools protocol: Document, Script, Stylesheet … */
  readonly type: string;
  readonly bytes: number;
}

export interface Weight {
  readonly loads: readonly Load[];
  /** Bytes of all bodies as sent. */
  readonly total: number;
  /** Bytes of JavaScript: files as sent, and what stands inside the page, compressed alone. */
  readonly script: number;
}

const packed = (text: string): number => (text === '' ? 0 : brotliCompressSync(text).length);

/** Icons and manifest: a browser fetches them beside the page, out of the protocol's sight. */
async function besides(page: Page, seen: ReadonlySet<string>): Promise<Load[]> {
  const links = await page
    .locator('link[rel~="icon"], link[rel="manifest"]')
    .evaluateAll((all) => all.map((link) => (link as HTMLLinkElement).href));
  const missing = links.filter((url) => url.startsWith('http') && !seen.has(url));
  return Promise.all(
    missing.map(async (url) => {
      const response = await fetch(url, { headers: { 'accept-encoding': 'br' } });
      const length = response.headers.get('content-length');
      return {
        url,
        type: 'Other',
        bytes: Number(length ?? (await response.arrayBuffer()).byteLength),
      };
    }),
  );
}

/**
 * Loads a page as on a first visit, nothing cached, until the network rests, and weighs all it
 * took: bodies as sent, headers not counted. The server must say each body's length, or the
 * protocol's own count is taken.
 */
export async function weigh(browser: Browser, url: string): Promise<Weight> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  try {
    const page = await context.newPage();
    const cdp = await context.newCDPSession(page);
    await cdp.send('Network.enable');
    await cdp.send('Network.setCacheDisabled', { cacheDisabled: true });
    const open = new Map<string, Load>();
    const ahead = new Set<string>();
    cdp.on('Network.requestWillBeSent', ({ requestId, request }) => {
      if (request.initialPriority === 'VeryLow') ahead.add(requestId);
    });
    cdp.on('Network.responseReceived', ({ requestId, response, type }) => {
      const length = Object.entries(response.headers).find(
        ([name]) => name.toLowerCase() === 'content-length',
      )?.[1];
      // What is fetched ahead, painted without it, is the next page's weight, or the copy's.
      if (/^http(?!.*\/kept\/)/.test(response.url) && !ahead.has(requestId))
        open.set(requestId, { url: response.url, type, bytes: Number(length ?? Number.NaN) });
    });
    cdp.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
      const load = open.get(requestId);
      if (load !== undefined && Number.isNaN(load.bytes))
        open.set(requestId, { ...load, bytes: encodedDataLength });
    });
    await page.goto(url, { waitUntil: 'networkidle' });
    const inline = await page.locator('script:not([src])').evaluateAll((all) =>
      all
        .filter((script) => !/json|speculationrules/.test(script.getAttribute('type') ?? ''))
        .map((script) => script.textContent)
        .join('\n'),
    );
    const seen = [...open.values()];
    const loads = [...seen, ...(await besides(page, new Set(seen.map((load) => load.url))))];
    const sum = (of: readonly Load[]) => of.reduce((total, { bytes }) => total + bytes, 0);
    return {
      loads,
      total: sum(loads),
      script: sum(loads.filter(({ type }) => type === 'Script')) + packed(inline),
    };
  } finally {
    await context.close();
  }
}

/** What a page may weigh, brotli-compressed, bytes. */
export const CEILINGS = {
  /** One initial TCP window: 10 segments of 1,460 bytes (RFC 6928). */
  question: 14_600,
  /** Of it; a page that looks at the whole journey before it shows a step needs some 250 of them. */
  questionScript: 4_400,
  /** The same of a page that counts a wait, or tells whether the firm is open. */
  clockScript: 5_920,
  /** Photos, the details that matter most and what to do until the visit are on it. */
  note: 44_000,
  preview: 53_000,
  round: 54_000,
  desk: 41_000,
  /** The same with a call in the main guide: its words, and the piece of the release it writes codes by. */
  call: 77_000,
  /** The preview with a code, of the main guide and of the one whose figures weigh most. */
  read: { 'door-locked': 92_000, burner: 105_000 },
} as const;
