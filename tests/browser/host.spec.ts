// The built site on hosts as they are: Debian's nginx with the configuration the project gives, and
// a plain file server that may not write, under a sub-path.
import { spawn, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { once } from 'node:events';
import { existsSync } from 'node:fs';
import { chmod, readFile, readdir, rm, stat, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { gunzipSync } from 'node:zlib';
import type { Browser } from '@playwright/test';
import { missing } from '../../.config/browsers.ts';
import { headersFor, parseHeaders } from '../../src/cli/headers.ts';
import { nginxConfig } from '../../src/cli/nginx-config.ts';
import { policy } from '../../src/site/policy.ts';
import { ask } from '../unit/cli/ask.ts';
import { expect, siteDir, test } from './support/fixtures.ts';
import { NOBODY, copyOf, isRoot, nginx, type Nginx } from './support/nginx.ts';
import { codeFor, shownCode, to } from './support/note.ts';
import { answerLink, pagesOf, readablePagesOf } from './support/site.ts';
import { watch } from './support/watch.ts';

test.skip(({ isMobile }) => !isMobile, 'a host is the same for every screen');

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
      await answerLink(page, answer).click();
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

test.describe('Debian’s nginx', () => {
  test.skip(missing('nginx').length > 0 && !process.env['CI'], 'no nginx here');
  let folder: string;
  let root: string;
  let host: Nginx;
  const rules = async () => parseHeaders(await readFile(join(root, '_headers'), 'utf8'));

  test.beforeAll(async () => {
    folder = await copyOf(siteDir());
    root = join(folder, 'site');
  });
  test.afterAll(() => rm(folder, { recursive: true }));

  test.describe('at the top of a host, as the command line prints it', () => {
    test.beforeAll(async () => {
      host = await nginx((listen) => {
        const words = ['--root', root, '--site', 'https://range.example', '--listen', listen];
        const { status, stdout, stderr } = spawnSync('node', ['src/cli/nginx.ts', ...words], {
          encoding: 'utf8',
        });
        expect(status, stderr).toBe(0);
        return stdout;
      });
    });
    test.afterAll(() => host.close());

    test('gives every file whole, compressed where asked, with its kind', async () => {
      const entries = await readdir(root, { recursive: true, withFileTypes: true });
      const files = entries
        .filter((entry) => entry.isFile() && !/\.(?:gz|br)$|^_headers$/.test(entry.name))
        .map((entry) => relative(root, join(entry.parentPath, entry.name)));
      expect(files.length).toBeGreaterThan(100);
      for (const file of files) {
        const data = await readFile(join(root, file));
        const plain = await ask(host.origin, `/${file}`);
        expect(plain.status, file).toBe(200);
        expect(plain.body.equals(data), file).toBe(true);
        // Media types: RFC 9239, RFC 8259, HTML, CSS, SVG and PNG by their registrations.
        expect(plain.headers['content-type'], file).toMatch(
          /^(?:text\/(?:html|css|javascript|plain); charset=utf-8|application\/(?:manifest\+)?json(?:; charset=utf-8)?|image\/(?:svg\+xml|png))$/,
        );
        const small = existsSync(join(root, `${file}.gz`));
        const packed = await ask(host.origin, `/${file}`, {
          'accept-encoding': 'gzip, deflate, br',
        });
        expect(packed.headers['content-encoding'], file).toBe(small ? 'gzip' : undefined);
        if (!small) continue;
        expect(packed.headers['vary'], file).toContain('Accept-Encoding');
        expect(gunzipSync(packed.body).equals(data), file).toBe(true);
        expect(packed.headers['content-type'], file).toBe(plain.headers['content-type']);
      }
    });

    test('gives the headers that the site’s own file says, and the policy of its pages', async () => {
      const said = await rules();
      const paths = [...pagesOf(root), '/sw.js', '/icon.svg', '/no/such/page/', '/preview'];
      for (const path of paths) {
        const { headers } = await ask(host.origin, path);
        const wanted = headersFor(said, path === '/preview' ? '/' : path);
        expect(wanted.size).toBeGreaterThan(5);
        if (path !== '/preview')
          for (const [name, value] of wanted) expect(headers[name], `${path} ${name}`).toBe(value);
        expect(headers['content-security-policy'], path).toBe(`${policy}; frame-ancestors 'none'`);
        expect(headers['cache-control'], path).toBe('no-cache');
      }
    });

    test('lets files named by their content be kept, and nothing else', async () => {
      const [file = ''] = await readdir(join(root, '_astro'));
      const kept = await ask(host.origin, `/_astro/${file}`);
      expect(kept.headers['cache-control']).toBe('public, max-age=31536000, immutable');
      const missing = await ask(host.origin, '/_astro/missing.js');
      expect(missing.status).toBe(404);
      expect(missing.headers['cache-control']).toBe('no-cache');
      // RFC 9110, section 13.1.2: the same file is not sent again.
      const first = await ask(host.origin, '/');
      const again = await ask(host.origin, '/', {
        'if-none-match': String(first.headers['etag']),
      });
      expect(again.status).toBe(304);
    });

    test('answers unknown addresses with the 404 page, and never with more', async () => {
      const lost = await readFile(join(root, '404.html'));
      for (const path of ['/no/such/page/', '/_headers', '/%2e%2e/%2e%2e/etc/passwd', '/es/']) {
        if (path === '/es/' && existsSync(join(root, 'es'))) continue;
        const { status, body } = await ask(host.origin, path);
        expect([404, 400], path).toContain(status);
        if (status === 404) expect(body.equals(lost), path).toBe(true);
      }
      expect((await ask(host.origin, '/', {}, 'POST')).status).toBe(405);
      const cut = await ask(host.origin, '/door-locked/danger');
      expect(cut.status).toBe(301);
      expect(cut.headers['location']).toBe('/door-locked/danger/');
    });

    test('carries a whole journey', async ({ browser }) => {
      await wholeJourney(browser, `${host.origin}/`);
    });
  });

  test.describe('under a sub-path, in several languages', () => {
    const languages = ['en', 'es', 'ar'];
    test.beforeAll(async () => {
      const home = await readFile(join(root, 'index.html'), 'utf8');
      for (const language of languages.slice(1))
        await writeFile(
          join(root, `index.${language}.html`),
          home.replace(/<html lang="\w+"/, `<html lang="${language}"`),
        );
      const said = await rules();
      const site = 'https://range.example/help/range/';
      host = await nginx((listen) => nginxConfig({ root, site, listen, rules: said, languages }));
    });
    test.afterAll(() => host.close());

    // RFC 9110, section 12.5.4; lists as browsers write them, best first. From memory.
    for (const [asked, from, given] of [
      [undefined, undefined, 'en'],
      ['es', 'none', 'es'],
      ['es-MX,es;q=0.9,en;q=0.8', 'none', 'es'],
      ['en-US,en;q=0.9,es;q=0.8', 'none', 'en'],
      ['de-DE, de;q=0.9, AR;q=0.7, en;q=0.6', 'cross-site', 'ar'],
      ['de,fr;q=0.5', undefined, 'en'],
      ['est,es;q=0.5', undefined, 'es'],
      ['*', undefined, 'en'],
      ['es', 'same-origin', 'en'],
      ['"; }', undefined, 'en'],
    ] as const)
      test(`speaks ${given} to ${asked ?? 'whom says nothing'} from ${from ?? 'anywhere'}`, async () => {
        const { status, headers, body } = await ask(host.origin, '/help/range/', {
          ...(asked === undefined ? {} : { 'accept-language': asked }),
          ...(from === undefined ? {} : { 'sec-fetch-site': from }),
        });
        expect(status).toBe(200);
        expect(headers['location']).toBeUndefined();
        expect(headers['vary']).toContain('Accept-Language, Sec-Fetch-Site');
        expect(/<html lang="(\w+)"/.exec(body.toString())?.[1]).toBe(given);
        expect(headers['cache-control']).toBe('no-cache');
      });

    test('chooses for the first page alone', async () => {
      const spanish = { 'accept-language': 'es' };
      const page = await ask(host.origin, '/help/range/door-locked/danger/', spanish);
      expect(page.body.toString()).toContain('<html lang="en"');
      expect(page.headers['vary']).not.toContain('Language');
    });

    test('keeps to its folder', async () => {
      expect((await ask(host.origin, '/')).body.toString()).not.toContain('<main');
      expect((await ask(host.origin, '/help/range')).headers['location']).toBe('/help/range/');
      const { headers } = await ask(host.origin, '/help/range/preview/');
      expect(headers['permissions-policy']).toMatch(/camera=\(self\)/);
      const [file = ''] = await readdir(join(root, '_astro'));
      const kept = await ask(host.origin, `/help/range/_astro/${file}`);
      expect(kept.headers['cache-control']).toContain('immutable');
      const lost = await ask(host.origin, '/help/range/nothing/');
      expect(lost.status).toBe(404);
      expect(lost.body.toString()).toContain('<main');
    });
  });
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
    expect(readablePagesOf(root).length).toBeGreaterThan(80);
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
