import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from '@playwright/test';
import { CHROMIUM_FLAGS, wholeChromium as program } from '../../.config/browsers.ts';
import { serve } from '../../src/cli/serve.ts';
import { formatFragment } from '../../src/address/fragment.ts';
import { codeFor, shownCode, to } from '../browser/support/note.ts';
import { CEILINGS, weigh, type Weight } from '../browser/support/weight.ts';
import { kindsOf } from '../browser/support/kinds.ts';
import { median, times } from './repeat.ts';
import type { Row } from './row.ts';
import { firstVisit, nextPage, slowestInteraction, type From, type Loaded } from './slow-phone.ts';

const RUNS = 7;
/** Interaction to Next Paint up to 200 ms is called good (Web Vitals, from memory). */
const INTERACTION_MS = 200;
/** A technician's taps, one after another with a meter in the other hand. */
const STAFF_MS = 100;
/** By where the next page comes from; a slow network is measured and has no ceiling of its own. */
const NEXT_CEILINGS: Record<From, number | undefined> = {
  warm: 50,
  offline: 150,
  'slow 4G': undefined,
};

/** What is tapped on each kind of page, none of it leaving the page. */
const TAPS: readonly (readonly [kind: string, path: string, act: (page: Page) => Promise<void>])[] =
  [
    [
      'question',
      '/door-locked/danger/',
      async (page) => {
        for (const fold of await page.locator('summary').all()) await fold.click();
      },
    ],
    [
      'note',
      `/note/#${formatFragment(to('stop-book'))}`,
      async (page) => {
        await shownCode(page);
        for (const fold of await page.locator('main summary:visible').all()) await fold.click();
        for (const choice of (await page.locator('main label:visible').all()).slice(0, 6))
          await choice.click();
      },
    ],
    [
      'preview',
      `/preview/#c=${codeFor(to('stop-book'))}`,
      async (page) => {
        const check = page.locator('section.plan ol.checks > li').first();
        for (let times = 0; times < 3; times += 1) {
          // After a result the next check is open.
          if (times === 0) await check.locator('summary').first().click();
          await check.locator('.results button').last().click();
        }
      },
    ],
  ];
const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

/** Weighs every page of a kind and keeps the heaviest. */
async function heaviest(browser: Browser, urls: readonly string[]): Promise<Weight> {
  let most: Weight | undefined;
  for (const url of urls) {
    const weight = await weigh(browser, url);
    if (most === undefined || weight.total > most.total) most = weight;
  }
  if (most === undefined) throw new Error('no page to weigh');
  return most;
}

function speedRows(kind: string, visits: readonly Loaded[]): Row[] {
  const note = `slow 4G, 4× CPU, median of ${String(RUNS)}`;
  const of = (key: keyof Loaded) => median(visits.map((visit) => visit[key]));
  return [
    { name: `${kind}: LCP`, value: of('lcp'), unit: 'ms', ceiling: 1200, note },
    { name: `${kind}: CLS`, value: of('cls'), unit: '', ceiling: 0, note },
    { name: `${kind}: long tasks`, value: of('longTasks'), unit: '', ceiling: 0, note },
  ];
}

/** Page weights, paint times and shifts of the built site in `dist`. */
export async function benchPages(): Promise<Row[]> {
  const site = await serve({ dir: DIST, port: 0 });
  const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
  const urlOf = (path: string) => new URL(path, site.url).href;
  try {
    const rows: Row[] = [];
    for (const { kind, paths, start, ceiling } of kindsOf(DIST)) {
      const urls = paths.map(urlOf);
      const { total, script, loads } = await heaviest(browser, urls);
      const note = `first visit, brotli, ${String(loads.length)} loads, heaviest of ${String(urls.length)}`;
      rows.push({ name: `${kind}: weight`, value: total, unit: 'B', ceiling, note });
      rows.push({
        name: `${kind}: JavaScript`,
        value: script,
        unit: 'B',
        ...(kind === 'question' ? { ceiling: CEILINGS.clockScript } : {}),
      });
      // A page in the middle of a guide, without its journey, opens the danger list: no one's first visit.
      const first = start === undefined ? (urls[0] ?? '') : urlOf(start);
      rows.push(...speedRows(kind, await times(RUNS, () => firstVisit(browser, first))));
    }
    const [question] = kindsOf(DIST);
    const start = urlOf(question?.start ?? '/');
    for (const from of Object.keys(NEXT_CEILINGS) as From[]) {
      const ceiling = NEXT_CEILINGS[from];
      rows.push({
        name: `next question, ${from}`,
        value: median(await times(RUNS, () => nextPage(browser, start, from))),
        unit: 'ms',
        ...(ceiling === undefined ? {} : { ceiling }),
        note: `tap to painted, 4× CPU, median of ${String(RUNS)}`,
      });
    }
    for (const [kind, path, act] of TAPS)
      rows.push({
        name: `${kind}: slowest interaction`,
        value: median(await times(RUNS, () => slowestInteraction(browser, urlOf(path), act))),
        unit: 'ms',
        ceiling: kind === 'preview' ? STAFF_MS : INTERACTION_MS,
        note: `tap to painted, 4× CPU, median of ${String(RUNS)}`,
      });
    return rows;
  } finally {
    await browser.close();
    await site.close();
  }
}
