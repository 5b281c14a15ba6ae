import { chromium } from '@playwright/test';
import { CHROMIUM_FLAGS, wholeChromium as program } from '../../.config/browsers.ts';
import { content } from '../../src/content/load.ts';
import { serve } from '../../src/cli/serve.ts';
import { loadGuides } from '../../src/guide/load-guides.ts';
import { prove } from '../../src/proof/prove.ts';
import { freeze } from '../../src/note/freeze.ts';
import { makeCodebooks } from '../../src/note/codebook.ts';
import { CEILINGS, weigh } from '../browser/support/weight.ts';
import { pagesOf } from '../browser/support/site.ts';
import { buildWith, madeUp } from './made-up.ts';
import type { MadeUp } from './made-up.ts';
import type { Row } from './row.ts';

const LARGE = 2000;
const MANY = 50;
/** About as many pages as a published guide has. */
const USUAL = 60;
/** Pages weighed of each guide. */
const WEIGHED = 3;

const large = [madeUp('large', LARGE)];
/** Every second guide hands over to the one after it. */
const many = Array.from({ length: MANY }, (_, i) =>
  madeUp(`guide-${i}x`, USUAL, i % 2 === 0 && i + 1 < MANY ? `guide-${i + 1}x` : undefined),
);

function timed<T>(work: () => T): { readonly value: T; readonly ms: number } {
  const from = performance.now();
  const value = work();
  return { value, ms: performance.now() - from };
}

function pureRows(name: string, guides: readonly MadeUp[], ceiling?: number): Row[] {
  const blocks = content().blocks();
  if (!blocks.ok) throw new Error(JSON.stringify(blocks.error[0]));
  const files = guides.map(({ id, graph }) => ({ source: graph, file: id }));
  const loaded = timed(() => loadGuides(files, blocks.value));
  if (!loaded.value.ok) throw new Error(JSON.stringify(loaded.value.error[0]));
  const made = loaded.value.value;
  const proved = timed(() => made.every((guide) => prove(guide).holds));
  if (!proved.value) throw new Error(`${name} does not hold`);
  const codebook = timed(() => makeCodebooks([freeze(made, [], 1, '2026-01-01')]));
  const pages = made.reduce((sum, { nodes }) => sum + nodes.size, 0);
  const note = `${pages} pages, hand-overs counted`;
  return [
    { name: `${name}: read and join`, value: loaded.ms, unit: 'ms', note },
    {
      name: `${name}: prove`,
      value: proved.ms,
      unit: 'ms',
      ...(ceiling === undefined ? {} : { ceiling }),
    },
    { name: `${name}: freeze and count`, value: codebook.ms, unit: 'ms' },
  ];
}

/** Build time of a site with these guides, and what a first visit to their pages weighs. */
async function siteRows(name: string, guides: readonly MadeUp[]): Promise<Row[]> {
  const built = await buildWith(guides);
  const site = await serve({ dir: built.dist, port: 0 });
  const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
  try {
    const pages = pagesOf(built.dist);
    const weighed = guides.flatMap(({ id }) =>
      pages.filter((page) => page.startsWith(`/${id}/`)).slice(0, WEIGHED),
    );
    if (weighed.length === 0) throw new Error(`${name}: no page was built`);
    let most = 0;
    for (const page of weighed.slice(0, MANY)) {
      const { total } = await weigh(browser, new URL(page, site.url).href);
      most = Math.max(most, total);
    }
    return [
      { name: `${name}: build`, value: built.seconds, unit: 's', note: `${pages.length} pages` },
      {
        name: `${name}: question page`,
        value: most,
        unit: 'B',
        ceiling: CEILINGS.question,
        note: 'first visit, brotli, heaviest of a sample',
      },
    ];
  } finally {
    await browser.close();
    await site.close();
    await built.remove();
  }
}

/** How a large guide and many guides are borne: proof, codebook, build and pages. */
export async function benchGuides(): Promise<Row[]> {
  return [
    ...pureRows(`one guide of ${LARGE}`, large, 1000),
    ...pureRows(`${MANY} guides`, many),
    ...(await siteRows(`one guide of ${LARGE}`, large)),
    ...(await siteRows(`${MANY} guides`, many)),
  ];
}
