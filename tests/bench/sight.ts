import { fileURLToPath } from 'node:url';
import { chromium, type Page } from '@playwright/test';
import { CHROMIUM_FLAGS, wholeChromium as program } from '../../.config/browsers.ts';
import { formatFragment } from '../../src/address/fragment.ts';
import { formatJourney } from '../../src/address/journey-text.ts';
import { serve } from '../../src/cli/serve.ts';
import { ownNodes } from '../../src/guide/ids.ts';
import { codeFor, to } from '../browser/support/codes.ts';
import { guides, shortestJourneys } from '../browser/support/shortest-journeys.ts';
import type { Row } from './row.ts';

const DIST = fileURLToPath(new URL('../../dist', import.meta.url));
const PHONE = { viewport: { width: 360, height: 740 }, isMobile: true, hasTouch: true } as const;
const DESK = { viewport: { width: 1280, height: 720 } } as const;
/** What a phone's browser leaves of a page of 360×740 while its bars are out. */
const LOW = 620;
const HIGH = 740;

/** Where what is looked for ends, in CSS pixels from the page's top. */
interface Ends {
  readonly answers: readonly number[];
  readonly call: number | undefined;
  readonly note: number | undefined;
}

const endsOf = (page: Page): Promise<Ends> =>
  page.evaluate(() => {
    const ends = (part: string) =>
      [...document.querySelectorAll(part)].map((one) => one.getBoundingClientRect().bottom);
    const [call] = ends('.calls a');
    const [note] = ends('.to-note a');
    return { answers: ends('.page .answers a'), call, note };
  });

/** The share of pages, in percent. */
const share = (of: readonly boolean[]): number =>
  (100 * of.filter(Boolean).length) / Math.max(of.length, 1);

async function guidePages(page: Page, root: string): Promise<Row[]> {
  const seen: { readonly urgent: boolean; readonly low: Ends; readonly high: Ends }[] = [];
  for (const guide of guides) {
    const shortest = shortestJourneys(guide);
    for (const { id, urgency } of ownNodes(guide)) {
      const journey = formatJourney(shortest.get(id) ?? []);
      await page.setViewportSize({ width: 360, height: LOW });
      await page.goto(`${root}${guide.id}/${id}/${journey && `#j=${journey}`}`);
      const low = await endsOf(page);
      await page.setViewportSize(PHONE.viewport);
      seen.push({ urgent: urgency === 'emergency', low, high: await endsOf(page) });
    }
  }
  const asking = seen.filter(({ high }) => high.answers.length > 0);
  const ends = seen.filter(({ high }) => high.answers.length === 0);
  const calling = ends.filter(({ high }) => high.call !== undefined);
  const calm = ends.filter(({ urgent }) => !urgent);
  const row = (name: string, of: readonly boolean[], floor?: number): Row => ({
    ...{ name, value: share(of), unit: '%', note: `of ${String(of.length)} pages` },
    ...(floor === undefined ? {} : { floor }),
  });
  const last = ({ answers }: Ends) => Math.max(...answers);
  return [
    row(
      'first answer in sight, 360×620',
      asking.map(({ low }) => (low.answers[0] ?? 0) <= LOW),
      100,
    ),
    row(
      'all answers in sight, 360×620',
      asking.map(({ low }) => last(low) <= LOW),
    ),
    row(
      'all answers in sight, 360×740',
      asking.map(({ high }) => last(high) <= HIGH),
      75,
    ),
    row(
      'call button in sight, 360×620',
      calling.map(({ low }) => (low.call ?? Infinity) <= LOW),
      100,
    ),
    row(
      'note button in sight, 360×620',
      calm.map(({ low }) => (low.note ?? Infinity) <= LOW),
    ),
    row(
      'note button in sight, 360×740',
      calm.map(({ high }) => (high.note ?? Infinity) <= HIGH),
      100,
    ),
  ];
}

/** Heights of pages and where their point stands, each once it is drawn. */
const TOOLS: readonly (readonly [name: string, path: string, drawn: string, point: string])[] = [
  ['note', `note/#${formatFragment(to('stop-book'))}`, '.qr svg', '.code-card .groups'],
  ['preview', `preview/#c=${codeFor(to('stop-book'))}`, '.faults .range', '.load'],
  ['desk, danger', 'desk/#g=door-locked&j=danger.none', '.choices button', '.choices'],
  ['route', 'round/', '#codes', '#codes'],
];

async function toolRows(page: Page, root: string, size: string): Promise<Row[]> {
  const rows: Row[] = [];
  for (const [name, path, drawn, point] of TOOLS) {
    await page.goto('about:blank');
    await page.goto(root + path);
    await page.locator(drawn).first().waitFor();
    const height = await page.evaluate(() => document.querySelector('main')?.scrollHeight ?? 0);
    const box = await page.locator(point).first().boundingBox();
    rows.push({ name: `${name}: height of its main part, ${size}`, value: height, unit: 'px' });
    rows.push({ name: `${name}: y of ${point}, ${size}`, value: box?.y ?? NaN, unit: 'px' });
  }
  return rows;
}

/** What is in sight of each guide's pages on a phone, and how high the tools stand. */
export async function benchSight(): Promise<Row[]> {
  const site = await serve({ dir: DIST, port: 0 });
  const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
  try {
    const phone = await browser.newPage({ ...PHONE, serviceWorkers: 'block' });
    const desk = await browser.newPage({ ...DESK, serviceWorkers: 'block' });
    return [
      ...(await guidePages(phone, site.url)),
      ...(await toolRows(phone, site.url, '360×740')),
      ...(await toolRows(desk, site.url, '1280×720')),
    ];
  } finally {
    await browser.close();
    await site.close();
  }
}
