import { mkdir, mkdtemp, readFile, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { frontPages } from '../../../src/site/build/front-pages.ts';
import { parseHeaders } from '../../../src/headers.ts';
import { nginxConfig, type NginxSite } from '../../../src/cli/nginx-config.ts';
import { headersFile } from '../../../src/site/policy.ts';

// What nginx makes of the configuration is tested with nginx itself, in tests/built/host.test.ts.
const SITE: NginxSite = {
  root: '/srv/hobnote',
  site: 'https://range.example',
  listen: '80',
  rules: parseHeaders(headersFile(['/preview/'], ['/recall.json'])),
  languages: ['en'],
};

it('does not choose a language where there is one', () => {
  expect(nginxConfig(SITE)).not.toContain('accept_language');
  expect(nginxConfig({ ...SITE, languages: ['en', 'es'] })).toContain('accept_language');
});

it('has the recall stored nowhere, and no other file', () => {
  const config = nginxConfig(SITE);
  expect(config).toContain('/recall.json "no-store";');
  expect(config).toContain('default "no-cache";');
});

it.each<[string, Partial<NginxSite>]>([
  ['a folder that would end its line', { root: '/srv/a;b' }],
  ['an address with a variable', { site: 'https://range.example/$uri/' }],
  ['a port that ends its line', { listen: '80;evil' }],
  ['a port in braces', { listen: '80 {' }],
  ['no port', { listen: '' }],
  ['a second line', { listen: '80\n}' }],
  ['a host that ends its line', { site: 'https://a;b.example/' }],
  ['a host in braces', { site: 'https://a{b.example/' }],
  ['a host with a variable', { site: 'https://$host/' }],
  ['headers without a policy', { rules: parseHeaders('/*\n  X-A: 1\n') }],
  ['a value with a quote', { rules: parseHeaders('/*\n  Content-Security-Policy: "a"\n') }],
  [
    'a pattern that is no folder',
    {
      rules: [...SITE.rules, ...parseHeaders('/*.js\n  Content-Security-Policy: a\n')],
    },
  ],
])('refuses %s', (_, wrong) => {
  expect(() => nginxConfig({ ...SITE, ...wrong })).toThrow();
});

it.each(['80', '127.0.0.1:8080', '[::1]:80', '*:443', 'unix:/run/hobnote.sock', 'localhost:80'])(
  'listens at %s',
  (listen) => {
    expect(nginxConfig({ ...SITE, listen })).toContain(`listen ${listen};`);
  },
);

it('puts the first pages of other languages at the top, whole', async () => {
  const root = await mkdtemp(join(tmpdir(), 'hobnote-front-'));
  try {
    for (const folder of ['es', 'care', 'fr']) await mkdir(join(root, folder));
    await writeFile(join(root, 'es', 'index.html'), 'hola');
    await writeFile(join(root, 'care', 'index.html'), 'care');
    await frontPages(root);
    expect((await readdir(root)).toSorted()).toEqual(['care', 'es', 'fr', 'index.es.html']);
    expect(await readFile(join(root, 'index.es.html'), 'utf8')).toBe('hola');
  } finally {
    await rm(root, { recursive: true });
  }
});
