import { fileURLToPath } from 'node:url';
import { chromium, type Browser } from '@playwright/test';
import { CHROMIUM_FLAGS, chromium as program } from '../../.config/browsers.ts';
import { serve } from '../../src/cli/serve.ts';
import { CEILINGS, weigh, type Weight } from '../browser/support/weight.ts';
import { kindsOf } from '../browser/support/kinds.ts';
import type { Row } from './row.ts';
import { firstVisit, nextPage, type Loaded } from './slow-phone.ts';

const RUNS = 7;
const DIST = fileURLToPath(new URL('../../dist', import.meta.url));

const median = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

async function times<T>(count: number, measure: () => Promise<T>): Promise<T[]> {
  const all: T[] = [];
  for (let run = 0; run < count; run += 1) all.push(await measure());
  return all;
}

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
    for (const { kind, paths, ceiling } of kindsOf(DIST)) {
      const urls = paths.map(urlOf);
      const { total, script, loads } = await heaviest(browser, urls);
      const note = `first visit, brotli, ${String(loads.length)} loads, heaviest of ${String(urls.length)}`;
      rows.push({ name: `${kind}: weight`, value: total, unit: 'B', ceiling, note });
      rows.push({
        name: `${kind}: JavaScript`,
        value: script,
        unit: 'B',
        ...(kind === 'question' ? { ceiling: CEILINGS.questionScript } : {}),
      });
      const [first = ''] = urls;
      rows.push(...speedRows(kind, await times(RUNS, () => firstVisit(browser, first))));
    }
    const [question] = kindsOf(DIST);
    const start = urlOf(question?.start ?? '/');
    for (const warm of [true, false]) {
      const taken = await times(RUNS, () => nextPage(browser, start, warm));
      rows.push({
        name: `next question, ${warm ? 'warm' : 'slow 4G'}`,
        value: median(taken),
        unit: 'ms',
        ...(warm ? { ceiling: 50 } : {}),
        note: `tap to painted, 4× CPU, median of ${String(RUNS)}`,
      });
    }
    return rows;
  } finally {
    await browser.close();
    await site.close();
  }
}
