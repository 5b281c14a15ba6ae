import { giveAnswer } from '../browser/support/site.ts';
import type { Browser, BrowserContext, CDPSession, Locator, Page } from '@playwright/test';

const KILOBIT = 1024 / 8;

/**
 * "Slow 4G" and the slowed processor of Lighthouse's mobile preset `mobileSlow4G`: 150 ms round
 * trip, 1.6 Mbit/s down, 750 kbit/s up, 4 times slower. Applied by the DevTools protocol, Lighthouse
 * multiplies latency by 3.75 and throughput by 0.9 (lighthouse-core/config/constants.js); so do we.
 */
export const SLOW_4G = {
  offline: false,
  latency: 150 * 3.75,
  downloadThroughput: 1.6 * 1024 * 0.9 * KILOBIT,
  uploadThroughput: 750 * 0.9 * KILOBIT,
};
const CPU_SLOWDOWN = 4;

/** What a page took to load and settle. */
export interface Loaded {
  /** Largest Contentful Paint, ms from the start of navigation. */
  readonly lcp: number;
  /** Sum of all layout shifts not caused by input: an upper bound of Cumulative Layout Shift. */
  readonly cls: number;
  /** Tasks of 50 ms or more on the main thread. */
  readonly longTasks: number;
}

declare global {
  interface Window {
    /** Filled by the observers below. */
    measured: Loaded & { interactions: number; slowest: number };
  }
}

function observe(): void {
  const measured = { lcp: Number.NaN, cls: 0, longTasks: 0, interactions: 0, slowest: 0 };
  window.measured = measured;
  const each = (type: string, take: (entry: PerformanceEntry) => void) => {
    // `durationThreshold` is for events alone; 16 ms is the least it takes (Event Timing).
    const wanted = { type, buffered: true, durationThreshold: 16 };
    new PerformanceObserver((list) => {
      list.getEntries().forEach(take);
    }).observe(wanted);
  };
  each('largest-contentful-paint', (entry) => (measured.lcp = entry.startTime));
  each('longtask', () => (measured.longTasks += 1));
  each('layout-shift', (entry) => {
    const shift = entry as PerformanceEntry & { value: number; hadRecentInput: boolean };
    if (!shift.hadRecentInput) measured.cls += shift.value;
  });
  const interacted = (entry: PerformanceEntry) => {
    if ((entry as PerformanceEventTiming).interactionId === 0) return;
    measured.slowest = Math.max(measured.slowest, entry.duration);
  };
  each('event', interacted);
  each('first-input', interacted);
  // Those faster than 16 ms are told of by the first alone.
  addEventListener('click', () => (measured.interactions += 1), { capture: true });
}

/**
 * A fresh phone, nothing cached; the screen of Lighthouse's mobile preset.
 *
 * @param keeps whether the site may be kept for use with no network, as it is by real readers
 */
export async function phone(browser: Browser, keeps = true): Promise<BrowserContext> {
  return browser.newContext({
    serviceWorkers: keeps ? 'allow' : 'block',
    viewport: { width: 412, height: 823 },
    deviceScaleFactor: 1.75,
    isMobile: true,
    hasTouch: true,
  });
}

/** Slows a page's processor, and its network unless told otherwise. */
export async function slow(page: Page, network = true): Promise<CDPSession> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Network.enable');
  if (network) await cdp.send('Network.emulateNetworkConditions', SLOW_4G);
  await cdp.send('Emulation.setCPUThrottlingRate', { rate: CPU_SLOWDOWN });
  return cdp;
}

/** First visit to a page on a slow phone. */
export async function firstVisit(browser: Browser, url: string): Promise<Loaded> {
  const context = await phone(browser);
  try {
    const page = await context.newPage();
    await page.addInitScript(observe);
    await slow(page);
    await page.goto(url, { waitUntil: 'load' });
    // Late shifts and late, larger paints count: wait until the page has settled.
    await page.waitForTimeout(1500);
    return await page.evaluate(() => window.measured);
  } finally {
    await context.close();
  }
}

/**
 * Keeps the time of a tap, and of the paint after the heading has changed within the same document,
 * on a clock that all documents share (time origin plus stamp).
 */
function stampTaps(): void {
  const stamp = (name: string, time: number) => {
    sessionStorage.setItem(name, String(performance.timeOrigin + time));
  };
  const heading = () => document.querySelector('h1')?.textContent;
  const tapped = (event: Event) => {
    stamp('tap', event.timeStamp);
    sessionStorage.removeItem('swapped');
    const before = heading();
    new MutationObserver((_, observer) => {
      if (heading() === before) return;
      observer.disconnect();
      // The frame that shows the change has been made once a task runs after its callbacks.
      requestAnimationFrame(() => setTimeout(() => stamp('swapped', performance.now())));
    }).observe(document, { childList: true, subtree: true, characterData: true });
  };
  addEventListener('click', tapped, { capture: true });
}

/** When the page on show was first painted, on the clock of the taps. */
async function painted(): Promise<number> {
  const swapped = sessionStorage.getItem('swapped');
  if (swapped !== null) return Number(swapped);
  return new Promise((found) => {
    new PerformanceObserver((list) => {
      const first = list.getEntriesByName('first-contentful-paint')[0];
      if (first !== undefined) found(performance.timeOrigin + first.startTime);
    }).observe({ type: 'paint', buffered: true });
  });
}

/** Where the next page comes from. */
export type From =
  /** Slow 4G, not fetched before. */
  | 'slow 4G'
  /** The browser's cache, as after going back. */
  | 'warm'
  /** What the service worker keeps; there is no network. */
  | 'offline';

/**
 * Time from the tap on an answer to the next question's first paint, ms, whether the page is loaded
 * anew or its content swapped; four times slower a processor.
 *
 * @param choice the answer tapped, as a selector
 */
export async function nextPage(
  browser: Browser,
  url: string,
  from: From,
  choice = 'main a[data-answer="none"]',
): Promise<number> {
  const context = await phone(browser, from === 'offline');
  try {
    const page = await context.newPage();
    await page.addInitScript(stampTaps);
    await page.goto(url, { waitUntil: 'networkidle' });
    const answer = page.locator(choice).first();
    if (from === 'warm') {
      await giveAnswer(answer);
      await page.waitForLoadState('networkidle');
      await page.goBack({ waitUntil: 'networkidle' });
    }
    if (from === 'offline') {
      await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
      await context.setOffline(true);
    }
    await slow(page, from === 'slow 4G');
    // What the page does while the reader reads (fetching ahead, say) is done by then.
    await page.waitForTimeout(1500);
    const asked = await page.locator('h1').innerText();
    await giveAnswer(answer);
    await page.locator('h1').filter({ hasNotText: asked }).waitFor();
    await page.waitForTimeout(500);
    const end = await page.evaluate(painted);
    return end - (await page.evaluate(() => Number(sessionStorage.getItem('tap'))));
  } finally {
    await context.close();
  }
}

/** From a tap until what it changes in a part of the page has been painted, ms. */
export async function tapToPainted(target: Locator, changes: string): Promise<number> {
  const [painted] = await Promise.all([
    target.evaluate(
      (element, part) =>
        new Promise<number>((found) => {
          const text = () => document.querySelector(part)?.textContent;
          const before = text();
          const tapped = ({ timeStamp }: Event): void => {
            const observer = new MutationObserver(() => {
              if (text() === before) return;
              observer.disconnect();
              requestAnimationFrame(() => {
                const { port1, port2 } = new MessageChannel();
                port1.onmessage = () => found(performance.now() - timeStamp);
                port2.postMessage(0);
              });
            });
            observer.observe(document, { childList: true, subtree: true, characterData: true });
          };
          element.addEventListener('click', tapped, { capture: true, once: true });
        }),
      changes,
    ),
    target.tap(),
  ]);
  return painted;
}

/** Slowest of some taps and keys, from the input to the next paint, ms, in steps of 8 (Event Timing). */
export async function slowestInteraction(
  browser: Browser,
  url: string,
  act: (page: Page) => Promise<unknown>,
): Promise<number> {
  const context = await phone(browser);
  try {
    const page = await context.newPage();
    await page.addInitScript(observe);
    await page.goto(url, { waitUntil: 'networkidle' });
    await slow(page, false);
    await act(page);
    await page.waitForTimeout(500);
    const { interactions, slowest } = await page.evaluate(() => window.measured);
    if (interactions === 0) throw new Error(`${url}: nothing was tapped`);
    return slowest;
  } finally {
    await context.close();
  }
}
