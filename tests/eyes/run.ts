// npm run eyes: other engines than axe-core on a page of each kind in each language of the built site, in both
// themes, with EVERY=1 on every page; a finding that decisions.yaml does not decide fails. What came of it is written
// down for the safety case (content/safety.json). A virtual screen reader says one journey in each language,
// as spoken/<language>.txt has it; `-- --update` pins it anew, `-- --spoken` does that alone.
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
const { spokenOtherwise } = await import('./spoken.ts');

const decisionsSchema = z.array(
  z.strictObject({
    engine: z.string(),
    rule: z.string(),
    /** What the found markup, or the way to it, must hold; `*`: any. */
    at: z.string(),
    decision: z.enum(['false alarm', 'accepted']),
    reason: z.string().min(20),
  }),
);
/** Read anew whenever asked for: what a long run finds can be decided while it goes on. */
const decisions = () =>
  decisionsSchema.parse(parse(readFileSync(join(here, 'decisions.yaml'), 'utf8')));
/** The decision that a finding meets. */
const decisionOn = ({ engine, rule, html, at }: Finding) =>
  decisions().findIndex(
    (one) =>
      one.engine === engine &&
      one.rule === rule &&
      (one.at === '*' || html.includes(one.at) || at.includes(one.at)),
  );

const NU = 'Nu';
const looks = new Map<string, number>();
const all: Finding[] = [];
const tell = ({ engine, rule, says, page, at, html }: Finding): void => {
  console.log(`${engine}, ${rule}: ${says}\n  on ${page}\n  at ${at}\n  ${html}`);
};
function take(engine: string, looked: number, found: readonly Finding[]): void {
  looks.set(engine, (looks.get(engine) ?? 0) + looked);
  all.push(...found);
  found.filter((one) => decisionOn(one) < 0).forEach(tell);
}

const spokenAlone = process.argv.includes('--spoken');
const whole = spokenAlone ? [] : visits(dist, true);
// Pages of no guide, which are unlike each other, come first.
const pages = whole
  .filter(({ first, speaks }) => first || speaks)
  .toSorted((a, b) => Number(a.of !== undefined) - Number(b.of !== undefined));
const server = await serve({ dir: dist, port: 0 });
const browser = await chromium.launch({ executablePath: program(), args: CHROMIUM_FLAGS });
let otherwise: readonly string[];
try {
  otherwise = await spokenOtherwise(browser, server.url, process.argv.includes('--update'));
  const lookAll = async (colorScheme: 'light' | 'dark'): Promise<void> => {
    // The engines are put into the page by the test, which the site's own policy forbids.
    const context = await browser.newContext({
      ...{ colorScheme, bypassCSP: true, serviceWorkers: 'block', locale: 'en-US' },
      viewport: { width: 360, height: 740 },
    });
    const page = await context.newPage();
    // No clock stops the run, however busy the machine is.
    page.setDefaultTimeout(0);
    for (const { path, hash } of pages) {
      await page.goto(new URL(path.slice(1) + hash, server.url).href);
      // What is folded is looked at, too; but the danger list would lie over the page.
      await page.evaluate(() => {
        for (const folded of document.querySelectorAll<HTMLDetailsElement>('details')) {
          folded.removeAttribute('name');
          folded.open = !folded.classList.contains('danger-list');
        }
      });
      for (const { name: engine, look } of engines) {
        const found = await look(page);
        const where = `${path} (${colorScheme})`;
        take(
          engine,
          1,
          found.map((one) => ({ ...one, engine, page: where })),
        );
      }
    }
    await context.close();
  };
  await Promise.all([lookAll('light'), lookAll('dark')]);
} finally {
  await browser.close();
  await server.close();
}
for (const language of otherwise)
  console.log(
    `The journey is said otherwise than tests/eyes/spoken/${language}.txt has it: read the difference, then --update.`,
  );
if (spokenAlone) process.exit(otherwise.length === 0 ? 0 : 1);
// Files are quickly read: all of them.
const files = whole.map(({ path }) => join(dist, path, 'index.html'));
take(
  NU,
  files.length,
  nu(files).map((one) => ({ ...one, engine: NU, page: one.at })),
);
const open = all.filter((one) => decisionOn(one) < 0);
const met = new Set(all.map(decisionOn));
const idle = every ? decisions().filter((_, index) => !met.has(index)) : [];
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
process.exitCode = otherwise.length + open.length + idle.length === 0 ? 0 : 1;
