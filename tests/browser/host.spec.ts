// A whole journey, its note and its copy kept offline, on hosts as they are: Debian's nginx with the
// configuration the project gives, and a plain file server that may not write, under a sub-path.
import { spawn } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { chmod, readFile, readdir, rm, stat } from 'node:fs/promises';
import { join } from 'node:path';
import type { Browser } from '@playwright/test';
import { missing } from '../../.config/browsers.ts';
import { parseHeaders } from '../../src/headers.ts';
import { nginxConfig } from '../../src/cli/nginx-config.ts';
import { mainLanguage } from '../../src/content/load.ts';
import { NOBODY, copyOf, isRoot, nginx } from '../support/nginx.ts';
import { expect, siteDir, test } from './support/fixtures.ts';
import { codeFor, shownCode, to } from './support/note.ts';
import { answerLink, giveAnswer } from './support/site.ts';
import { watch } from './support/watch.ts';

/** Home, a whole journey, its note code; then the same pages with the server's files kept. */
async function wholeJourney(browser: Browser, site: string): Promise<void> {
  const context = await browser.newContext({ serviceWorkers: 'allow' });
  try {
    const watched = await watch(context, site);
    const page = await context.newPage();
    const note = to('stop-book');
    await page.goto(site);
    await page.locator('a.start').click();
    expect(note.journey.length).toBeGreaterThan(3);
    for (const { at, answer } of note.journey) {
      await page.waitForURL((url) => url.href.startsWith(`${site}door-locked/${at}/`));
      await giveAnswer(answerLink(page, answer));
    }
    await page.locator('main a[data-note]').click();
    await page.waitForURL((url) => url.href.startsWith(`${site}note/`));
    const code = await shownCode(page);
    // The day made is the last symbol but those of the check: all before tells the journey.
    expect(code.slice(0, 6)).toBe(codeFor(note).slice(0, 6));
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await page.goto(`${site}preview/#c=${code}`);
    await expect(page.locator('#preview h2').first()).toBeVisible();
    expect(await page.evaluate(() => navigator.serviceWorker.controller?.scriptURL)).toBe(
      `${site}sw.js`,
    );
    expect(watched.verdict()).toEqual([]);
  } finally {
    await context.close();
  }
}

test('Debian’s nginx carries a whole journey', async ({ browser }) => {
  test.skip(
    missing('nginx').length > 0 && process.env['CI'] === undefined,
    'there is no nginx here',
  );
  const folder = await copyOf(siteDir());
  const root = join(folder, 'site');
  const rules = parseHeaders(await readFile(join(root, '_headers'), 'utf8'));
  const host = await nginx((listen) =>
    nginxConfig({
      root,
      site: 'https://range.example',
      listen,
      rules,
      languages: [mainLanguage()],
    }),
  );
  try {
    await wholeJourney(browser, `${host.origin}/`);
  } finally {
    await host.close();
    await rm(folder, { recursive: true });
  }
});

test('a plain file server that may not write carries a whole journey, under a sub-path', async ({
  browser,
}) => {
  const folder = await copyOf(siteDir());
  const root = join(folder, 'site');
  const everything = async () => [root, ...(await readdir(root, { recursive: true }))];
  const state = async () => {
    const hash = createHash('sha256');
    for (const name of (await readdir(root, { recursive: true })).toSorted()) {
      const { mtimeMs, size, mode } = await stat(join(root, name));
      hash.update(`${name} ${String(mtimeMs)} ${String(size)} ${String(mode)}\n`);
    }
    return hash.digest('hex');
  };
  for (const name of await everything()) {
    const file = name === root ? root : join(root, name);
    await chmod(file, (await stat(file)).isDirectory() ? 0o555 : 0o444);
  }
  const before = await state();
  const server = spawn('node', [
    join(import.meta.dirname, 'support/plain-server.ts'),
    ...[root, '/usb/stick/', ...(isRoot ? [String(NOBODY)] : [])],
  ]);
  try {
    const [said] = (await once(server.stdout, 'data')) as [Buffer];
    const { port, writable } = JSON.parse(said.toString()) as { port: number; writable: boolean };
    expect(writable).toBe(false);
    const site = `http://127.0.0.1:${String(port)}/usb/stick/`;
    await wholeJourney(browser, site);
    expect(await state(), 'nothing was written').toBe(before);
  } finally {
    server.kill();
    for (const name of await everything())
      if (name === root || (await stat(join(root, name))).isDirectory())
        await chmod(name === root ? root : join(root, name), 0o755);
    await rm(folder, { recursive: true });
  }
});
