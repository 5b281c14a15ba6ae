import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { join } from 'node:path';
import { chromium, type Browser } from '@playwright/test';
import { CHROMIUM_FLAGS, wholeChromium as program } from '../../.config/browsers.ts';
import { serve } from '../../src/cli/serve.ts';
import { shownCode, to } from '../browser/support/note.ts';
import { bundlesOf } from '../browser/support/releases.ts';
import { answerLink, giveAnswer } from '../browser/support/site.ts';
import type { Row } from './row.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
/** A usual end: the repair has to be booked. */
const END = 'stop-book';

/**
 * What a content network takes, an assumption, from memory: list prices of a large one in North
 * America for the first terabytes of a month, HTTPS. Yours will differ; the formula will not.
 */
const PRICE = { dollarsPerGigabyte: 0.085, dollarsPerRequest: 0.01 / 10_000 };
/** Places a content network answers from, an assumption, from memory, on the high side. */
const PLACES = 500;
const MILLION = 1e6;

interface Sent {
  readonly requests: number;
  /** Bytes as sent, headers of answers too. */
  readonly bytes: number;
}

/** Home, every page of a journey, its note: a first visit, nothing kept. */
async function journey(browser: Browser, site: string): Promise<Sent & { readonly fixed: number }> {
  const context = await browser.newContext({ serviceWorkers: 'block' });
  const page = await context.newPage();
  const cdp = await context.newCDPSession(page);
  await cdp.send('Network.enable');
  const urls = new Map<string, string>();
  let sent = { requests: 0, bytes: 0, fixed: 0 };
  cdp.on('Network.responseReceived', ({ requestId, response }) => {
    if (!response.fromDiskCache && !response.fromPrefetchCache) urls.set(requestId, response.url);
  });
  cdp.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const url = urls.get(requestId);
    if (url === undefined || encodedDataLength === 0) return;
    const fixed = sent.fixed + (url.includes('/_astro/') ? encodedDataLength : 0);
    sent = { requests: sent.requests + 1, bytes: sent.bytes + encodedDataLength, fixed };
  });
  await page.goto(site, { waitUntil: 'networkidle' });
  await page.locator('a.start').click();
  for (const { at, answer } of to(END).journey) {
    await page.waitForURL((url) => url.pathname.endsWith(`/${at}/`));
    await page.waitForLoadState('networkidle');
    await giveAnswer(answerLink(page, answer));
  }
  await page.locator('main a[data-note]').click();
  await shownCode(page);
  await page.waitForLoadState('networkidle');
  await context.close();
  return sent;
}

/** All that is kept for use with no network but staff's, as a static host that compresses sends it. */
async function whole(): Promise<Sent> {
  const names = [...(await bundlesOf(DIST)).keys()].filter((name) => !name.includes('/staff.'));
  const sizes = names.map((name) => statSync(join(DIST, `${name}.br`)).size);
  return { requests: sizes.length, bytes: sizes.reduce((sum, size) => sum + size, 0) };
}

const dollars = ({ requests, bytes }: Sent): number =>
  (bytes / 1e9) * PRICE.dollarsPerGigabyte + requests * PRICE.dollarsPerRequest;

/** What visits cost at a content network, on paper, from bytes and requests that are measured. */
export async function benchHosting(): Promise<Row[]> {
  const site = await serve({ dir: DIST, port: 0 });
  const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
  try {
    const walked = await journey(browser, site.url);
    const kept = await whole();
    const both = { requests: walked.requests + kept.requests, bytes: walked.bytes + kept.bytes };
    const files = kept.requests;
    const note = 'assumed: $0.085 a GB, $0.01 for 10,000 requests';
    return [
      { name: 'a journey with its note: sent', value: walked.bytes, unit: 'B', note: 'brotli' },
      { name: 'a journey with its note: requests', value: walked.requests, unit: '' },
      {
        name: 'of the bytes, named by content',
        value: (walked.fixed / walked.bytes) * 100,
        unit: '%',
        note: 'never asked for again',
      },
      { name: 'the whole site, kept: sent', value: kept.bytes, unit: 'B', note: 'brotli, bodies' },
      { name: 'the whole site, kept: requests', value: kept.requests, unit: '' },
      {
        name: 'a million journeys, nothing kept',
        value: dollars(walked) * MILLION,
        unit: '$',
        note,
      },
      { name: 'a million journeys, all kept', value: dollars(both) * MILLION, unit: '$', note },
      {
        name: 'requests that go past the edge, a million journeys a release',
        value: ((PLACES * files) / (MILLION * walked.requests)) * 100,
        unit: '%',
        note: `every file fetched once by each of ${String(PLACES)} places`,
      },
    ];
  } finally {
    await browser.close();
    await site.close();
  }
}
