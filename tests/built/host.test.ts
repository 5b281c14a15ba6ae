// The built site on Debian's nginx, with the configuration the project gives.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { join, relative } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { missing } from '../../.config/browsers.ts';
import { headersFor, parseHeaders } from '../../src/headers.ts';
import { nginxConfig } from '../../src/cli/nginx-config.ts';
import { policy, withStyle } from '../../src/site/policy.ts';
import { ask } from '../unit/cli/ask.ts';
import { copyOf, nginx, type Nginx } from '../support/nginx.ts';
import { pagesOf } from '../browser/support/site.ts';
import { dist, hashesIn, markup } from './site.ts';

// Where there is no nginx it is skipped, but not where CI is set.
describe.skipIf(missing('nginx').length > 0 && process.env['CI'] === undefined)(
  'Debian’s nginx',
  () => {
    let folder: string;
    let root: string;
    let host: Nginx;
    const rules = async () => parseHeaders(await readFile(join(root, '_headers'), 'utf8'));

    beforeAll(async () => {
      folder = await copyOf(dist);
      root = join(folder, 'site');
    });
    afterAll(() => rm(folder, { recursive: true }));

    describe('at the top of a host, as the command line prints it', () => {
      beforeAll(async () => {
        host = await nginx((listen) => {
          const words = ['--root', root, '--site', 'https://range.example', '--listen', listen];
          const { status, stdout, stderr } = spawnSync('node', ['src/cli/nginx.ts', ...words], {
            encoding: 'utf8',
          });
          expect(status, stderr).toBe(0);
          return stdout;
        });
      });
      afterAll(() => host.close());

      it('gives every file whole, compressed where asked, with its kind', async () => {
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
          // Media types: RFC 9239, RFC 8259, RFC 7111, HTML, CSS, SVG and PNG by their registrations.
          expect(plain.headers['content-type'], file).toMatch(
            /^(?:text\/(?:html|css|csv|javascript|plain); charset=utf-8|application\/(?:manifest\+)?json(?:; charset=utf-8)?|image\/(?:svg\+xml|png))$/,
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

      it('gives the headers that the site’s own file says, and the policy of its pages', async () => {
        const said = await rules();
        const paths = [...pagesOf(root), '/sw.js', '/icon.svg', '/no/such/page/', '/preview'];
        for (const path of paths) {
          const { headers } = await ask(host.origin, path);
          const wanted = headersFor(said, path === '/preview' ? '/' : path);
          expect(wanted.size).toBeGreaterThan(5);
          if (path !== '/preview')
            for (const [name, value] of wanted)
              expect(headers[name], `${path} ${name}`).toBe(value);
          // Styles that stand in some page are allowed by their hashes on all.
          const given = String(headers['content-security-policy']);
          const hashes = given.match(/'sha256-[\w+/]{43}='/g) ?? [];
          expect(hashes).toEqual(expect.arrayContaining(hashesIn(markup('/'))));
          expect(given, path).toBe(`${withStyle(policy, hashes)}; frame-ancestors 'none'`);
          expect(headers['cache-control'], path).toBe('no-cache');
        }
      });

      it('lets files named by their content be kept, and nothing else', async () => {
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

      it('has no page of nginx’s own, and lets nothing be kept that is not there', async () => {
        const lost = await readFile(join(root, '404.html'));
        const folders = [
          '/door-locked/',
          '/schema/',
          '/_astro/',
          '/_astro',
          '/_headers/',
          '/icon.svg/',
        ];
        for (const path of folders) {
          const { status, headers, body } = await ask(host.origin, path);
          if (status === 301) continue;
          expect([status, headers['cache-control'], body.equals(lost)], path).toEqual([
            404,
            'no-cache',
            true,
          ]);
          expect(headers['content-security-policy'], path).toContain('default-src');
        }
        for (const [path, status, sent, method] of [
          ['/', 405, {}, 'POST'],
          ['/', 405, {}, 'DELETE'],
          ['/', 416, { range: 'bytes=99999999-' }, 'GET'],
          ['/%00', 400, {}, 'GET'],
        ] as const) {
          const answer = await ask(host.origin, path, sent, method);
          expect(answer.status, path).toBe(status);
          if (status !== 400) expect(answer.body.toString(), path).not.toContain('<center>nginx');
        }
      });

      it('answers unknown addresses with the 404 page, and never with more', async () => {
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
    });

    describe('under a sub-path, in several languages', () => {
      const languages = ['en', 'es', 'ar'];
      beforeAll(async () => {
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
      afterAll(() => host.close());

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
        it(`speaks ${given} to ${asked ?? 'whom says nothing'} from ${from ?? 'anywhere'}`, async () => {
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

      it('chooses for the first page alone', async () => {
        const spanish = { 'accept-language': 'es' };
        const page = await ask(host.origin, '/help/range/door-locked/danger/', spanish);
        expect(page.body.toString()).toContain('<html lang="en"');
        expect(page.headers['vary']).not.toContain('Language');
      });

      it('keeps to its folder', async () => {
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
  },
);
