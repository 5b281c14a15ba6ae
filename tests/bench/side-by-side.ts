import { spawnSync } from 'node:child_process';
import { mkdtemp, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Browser } from '@playwright/test';
import { build } from 'vite';
import solid from 'vite-plugin-solid';
import { CHROMIUM_FLAGS, wholeChromium as program } from '../../.config/browsers.ts';
import { serve } from '../../src/cli/serve.ts';
import { weigh } from '../browser/support/weight.ts';
import { buildWith } from './made-up.ts';
import { median, times } from './repeat.ts';
import type { Row } from './row.ts';
import { pages, thirty } from './side-by-side/guide.ts';
import { firstVisit, nextPage, type From, type Loaded } from './slow-phone.ts';

const RUNS = 5;
/** A site to measure. */
interface Contender {
  readonly name: string;
  readonly dist: string;
  /** Its first question, from the site's root. */
  readonly start: string;
  /** Where its next question may come from. An app in one page has all of them at once. */
  readonly from: readonly From[];
  readonly remove: () => Promise<void>;
}

const APPS = fileURLToPath(new URL('side-by-side', import.meta.url));

/** When a file was last changed, ms; 0 where there is none. */
async function changed(file: string): Promise<number> {
  return stat(join(APPS, file)).then(
    ({ mtimeMs }) => mtimeMs,
    () => 0,
  );
}

function run(command: string, args: readonly string[]): void {
  const shell = process.platform === 'win32';
  const { status } = spawnSync(command, args, { cwd: APPS, stdio: ['ignore', 2, 2], shell });
  if (status !== 0) throw new Error(`${command} ${args.join(' ')} failed in ${APPS}`);
}

/**
 * Installs what only the apps need, a package of their own, and checks their types: the project's
 * own checks leave out what needs those packages.
 */
async function makeReady(): Promise<void> {
  if ((await changed('node_modules/.package-lock.json')) <= (await changed('package-lock.json')))
    run('npm', ['ci']);
  run(process.execPath, [
    fileURLToPath(new URL('../../node_modules/typescript7/bin/tsc', import.meta.url)),
    '--noEmit',
  ]);
}

async function app(name: string, file: string): Promise<Contender> {
  const dist = await mkdtemp(join(tmpdir(), 'hobnote-beside-'));
  await build({
    root: APPS,
    configFile: false,
    logLevel: 'error',
    define: { GUIDE: JSON.stringify(pages()) },
    plugins: [
      ...(file.endsWith('.tsx') ? [solid()] : []),
      {
        name: 'entry',
        transformIndexHtml: { order: 'pre', handler: (html) => html.replace('APP', file) },
      },
    ],
    build: { outDir: dist, emptyOutDir: true },
  });
  return { name, dist, start: '/', from: ['slow 4G'], remove: () => rm(dist, { recursive: true }) };
}

async function ours(): Promise<Contender> {
  const { dist, remove } = await buildWith([thirty]);
  return {
    name: 'ours',
    dist,
    start: '/thirty/danger/',
    from: ['slow 4G', 'warm', 'offline'],
    remove,
  };
}

async function measure(browser: Browser, contender: Contender): Promise<Row[]> {
  const { name, dist, start } = contender;
  const site = await serve({ dir: dist, port: 0 });
  const url = new URL(start, site.url).href;
  try {
    const { total, script, loads } = await weigh(browser, url);
    const visits = await times(RUNS, () => firstVisit(browser, url));
    const of = (key: keyof Loaded) => median(visits.map((visit) => visit[key]));
    const note = `slow 4G, 4× CPU, median of ${String(RUNS)}`;
    const rows: Row[] = [
      {
        name: `${name}: bytes to the first answer`,
        value: total,
        unit: 'B',
        note: `brotli, ${String(loads.length)} loads`,
      },
      { name: `${name}: of these JavaScript`, value: script, unit: 'B' },
      { name: `${name}: first question painted`, value: of('lcp'), unit: 'ms', note },
      { name: `${name}: long tasks`, value: of('longTasks'), unit: '', note },
    ];
    for (const from of contender.from)
      rows.push({
        name: `${name}: next question${contender.from.length > 1 ? `, ${from}` : ''}`,
        value: median(
          await times(RUNS, () => nextPage(browser, url, from, 'main [data-answer="none"]')),
        ),
        unit: 'ms',
        note: `tap to painted, 4× CPU, median of ${String(RUNS)}`,
      });
    return rows;
  } finally {
    await site.close();
  }
}

/**
 * One guide of 30 questions three ways: as this project publishes it (danger list, journey in the
 * address and use with no network included), as a plain app in one page, and as a general state
 * machine in a common framework; the two apps show the questions and nothing more.
 */
export async function benchSideBySide(): Promise<Row[]> {
  await makeReady();
  const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
  const rows: Row[] = [];
  try {
    for (const make of [
      ours,
      () => app('plain Solid app', 'solid.tsx'),
      () => app('state machine in React', 'react.ts'),
    ]) {
      const contender = await make();
      try {
        rows.push(...(await measure(browser, contender)));
      } finally {
        await contender.remove();
      }
    }
    return rows;
  } finally {
    await browser.close();
  }
}
