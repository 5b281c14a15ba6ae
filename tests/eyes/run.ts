// npm run eyes: other engines than axe-core on a page of each kind of the built site, in both themes; with
// EVERY=1 on every page. A finding that decisions.yaml does not decide fails. What came of it is written
// down for the safety case (content/safety.json). One journey is said by a virtual screen reader, and has to
// be said as spoken.txt has it; `-- --update` pins it anew.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium } from '@playwright/test';
import { parse } from 'yaml';
import { z } from 'zod';
import { CHROMIUM_FLAGS, chromium as program } from '../../.config/browsers.ts';
import { serve } from '../../src/cli/serve.ts';
import { dist } from '../built/site.ts';
import { every, visits } from '../browser/support/pages.ts';
import { today, write } from '../safety/results.ts';
import type { Finding } from './engines.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
if (!existsSync(join(here, 'node_modules/vnu-jar'))) {
  const shell = process.platform === 'win32';
  const { status } = spawnSync('npm', ['ci'], { cwd: here, stdio: ['ignore', 2, 2], shell });
  if (status !== 0)
    throw new Error('The engines were not installed: see the message of npm above.');
}
const { engines, nu, versionOf } = await import('./engines.ts');
const { spokenAsPinned } = await import('./spoken.ts');

const decisionsSchema = z.array(
  z.strictObject({
    engine: z.string(),
    rule: z.string(),
    /** A selector that the found markup must match; `*`: any. */
    at: z.string(),
    decision: z.enum(['false alarm', 'accepted']),
    reason: z.string().min(20),
  }),
);
const decisions = decisionsSchema.parse(parse(readFileSync(join(here, 'decisions.yaml'), 'utf8')));

const NU = 'Nu';
const looks = new Map<string, number>([[NU, 0]]);
const all: Finding[] = [];
// Of the safety case's long page Alfa takes many minutes; its parts are those of the pages below it.
const pages = visits(dist).filter(({ first, path }) => first && (every || path !== '/safety/'));
const server = await serve({ dir: dist, port: 0 });
const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
let pinned: boolean;
try {
  pinned = await spokenAsPinned(browser, server.url, process.argv.includes('--update'));
  for (const colorScheme of ['light', 'dark'] as const) {
    // The engines are put into the page by the test, which the site's own policy forbids.
    const context = await browser.newContext({
      ...{ colorScheme, bypassCSP: true, serviceWorkers: 'block', locale: 'en-US' },
      viewport: { width: 360, height: 740 },
    });
    const page = await context.newPage();
    for (const { path, hash } of pages) {
      await page.goto(new URL(path.slice(1) + hash, server.url).href);
      for (const { name: engine, look } of engines) {
        const found = await look(page);
        looks.set(engine, (looks.get(engine) ?? 0) + 1);
        all.push(...found.map((one) => ({ ...one, engine, page: `${path} (${colorScheme})` })));
      }
    }
    await context.close();
  }
} finally {
  await browser.close();
  await server.close();
}
const files = pages.map(({ path }) => join(dist, path, 'index.html'));
looks.set(NU, files.length);
all.push(...nu(files).map((one) => ({ ...one, engine: NU, page: one.at })));

const met = new Set<number>();
const decided = (finding: Finding): boolean => {
  const index = decisions.findIndex(
    ({ engine, rule, at }) =>
      engine === finding.engine &&
      rule === finding.rule &&
      (at === '*' || finding.html.includes(at)),
  );
  met.add(index);
  return index >= 0;
};
const open = all.filter((finding) => !decided(finding));
for (const { engine, rule, page, at, html, says } of open)
  console.log(`${engine}, ${rule}: ${says}\n  on ${page}\n  at ${at}\n  ${html}`);
const idle = every ? decisions.filter((_, index) => !met.has(index)) : [];
for (const { engine, rule, at } of idle) console.log(`No finding meets ${engine}, ${rule}, ${at}.`);

const rows = [...looks].map(([engine, count]) => {
  const findings = all.filter((one) => one.engine === engine).length;
  const left = open.filter((one) => one.engine === engine).length;
  return [engine, { looks: count, findings, decided: findings - left }] as const;
});
const versions = engines.map(({ name, package: of }) => [name, versionOf(of)] as const);
await write({
  eyes: {
    ...today({ ...Object.fromEntries(versions), [NU]: versionOf('vnu-jar') }),
    pages: pages.length,
    engines: Object.fromEntries(rows),
  },
});
for (const [engine, { looks: count, findings, decided: known }] of rows)
  console.log(
    `${engine}: ${String(count)} looks, ${String(findings)} findings, ${String(known)} decided`,
  );
if (!pinned)
  console.log(
    'The journey is said otherwise than tests/eyes/spoken.txt has it: read the difference, then --update.',
  );
process.exitCode = pinned && open.length + idle.length === 0 ? 0 : 1;
