import { fileURLToPath } from 'node:url';
import { chromium, type Browser, type Page } from '@playwright/test';
import { CHROMIUM_FLAGS, wholeChromium as program } from '../../.config/browsers.ts';
import { serve } from '../../src/cli/serve.ts';
import { formatFragment } from '../../src/address/fragment.ts';
import { guides, models } from '../../src/content/load.ts';
import { MOST_VISITS } from '../../src/route/limits.ts';
import { newest } from '../browser/support/codebooks.ts';
import { shownCode, to } from '../browser/support/note.ts';
import { written } from '../browser/support/preview.ts';
import { publishedCodebooks, sampleCodes } from '../unit/route/support/codes.ts';
import { CEILINGS, weigh, type Weight } from '../browser/support/weight.ts';
import { kindsOf } from '../browser/support/kinds.ts';
import { median, times } from './repeat.ts';
import type { Row } from './row.ts';
import {
  firstVisit,
  nextPage,
  slowestInteraction,
  tapToPainted,
  type From,
  type Loaded,
} from './slow-phone.ts';

const RUNS = 7;
const STAFF_RUNS = 3;
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
  ];

/** Results of the first check, one after another, and one taken back: tap to the new order painted, ms. */
async function results(page: Page): Promise<number> {
  const check = page.locator('section.plan ol.checks > li').first();
  await check.locator('summary').first().tap();
  const result = check.locator('.results button').last();
  const taken: number[] = [];
  // After a result the next check is open, while there is one.
  for (let tap = 0; tap < 4 && (await result.count()) > 0; tap += 1)
    taken.push(await tapToPainted(result, 'section.plan .checks'));
  taken.push(await tapToPainted(page.locator('.done button').first(), 'section.plan .checks'));
  return Math.max(...taken);
}

/** Moves, sorting, one taken out and put back, of the largest route: tap to the list painted, ms. */
async function reorder(page: Page): Promise<number> {
  await page.locator('.visit').last().waitFor({ state: 'attached' });
  const taken: number[] = [];
  for (const what of ['.visit .down', '.order button:last-of-type', '.order button'])
    taken.push(await tapToPainted(page.locator(what).first(), '.visits'));
  await page.locator('.visit .more').first().tap();
  for (const what of ['.visit .foot button:last-child', '.undo button'])
    taken.push(await tapToPainted(page.locator(what).first(), '.visits'));
  return Math.max(...taken);
}

const ROUTE = sampleCodes(publishedCodebooks(), MOST_VISITS);

/** The first six answers of a call. */
async function call(page: Page): Promise<number> {
  await page.locator('.choose .choices button').first().tap();
  const taken: number[] = [];
  for (let answer = 0; answer < 6; answer += 1) {
    await page.locator('.desk[data-seen] .bar-call').waitFor();
    const tick = page.locator('.middle .care .tick');
    if (await tick.isVisible()) await tick.tap();
    const choices = page.locator('.middle .choices button');
    const none = choices.filter({ hasText: 'None of these' });
    const next = answer === 0 ? none : choices.first();
    if ((await next.count()) > 0) taken.push(await tapToPainted(next, '#desk-say'));
  }
  return Math.max(...taken);
}

type Staff = readonly [name: string, path: string, act: (page: Page) => Promise<number>];

/** What staff tap. Notes with nothing answered leave the most to plan. */
const STAFF: readonly Staff[] = [
  ...guides()
    .filter(({ id }) => models()[id])
    .map(({ id }): Staff => {
      const note = { release: newest, guide: id };
      return [`preview, ${id}`, `/preview/#c=${written('danger.none', note)}`, results];
    }),
  [
    `round of ${MOST_VISITS}`,
    '/round/',
    async (page) => {
      await page.locator('#codes').fill(ROUTE.join('\n'));
      await page.locator('form.enter').evaluate((form: HTMLFormElement) => form.requestSubmit());
      await page
        .locator('.visit')
        .nth(MOST_VISITS - 1)
        .waitFor({ state: 'attached' });
      await page.locator('.load').waitFor();
      return reorder(page);
    },
  ],
  ['desk', '/desk/', call],
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
        ceiling: INTERACTION_MS,
        note: `tap to painted, 4× CPU, median of ${String(RUNS)}`,
      });
    for (const [name, path, act] of STAFF) {
      const slowest: number[] = [];
      const runs = await times(STAFF_RUNS, () =>
        slowestInteraction(browser, urlOf(path), async (page) => slowest.push(await act(page))),
      );
      const note = `4× CPU, median of ${String(STAFF_RUNS)}`;
      const common = { unit: 'ms', ceiling: STAFF_MS, note };
      rows.push({ name: `${name}: slowest interaction`, value: median(runs), ...common });
      rows.push({
        name: `${name}: slowest tap to the new list`,
        value: median(slowest),
        ...common,
      });
    }
    return rows;
  } finally {
    await browser.close();
    await site.close();
  }
}
