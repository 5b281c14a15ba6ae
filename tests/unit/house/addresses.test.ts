import { expect, test } from 'vitest';
import { withAddresses } from '../../../src/site/build/relative-addresses.ts';

const PAGE =
  '<a href="/about/">a</a> <script src="/_astro/x.js"></script> <a href="//other/">b</a>';

// How a browser resolves a relative address: RFC 3986, section 5.2, by its own URL parser.
test.each([
  ['index.html', '/help/'],
  ['index.es.html', '/help/'],
  ['about/index.html', '/help/about/'],
  ['es/door-locked/danger/index.html', '/help/es/door-locked/danger/'],
  // Shown at whatever address is not there.
  ['404.html', '/help/no/such/page/'],
])('addresses of %s lead to where the site lies', (name, shown) => {
  const site = 'https://range.example/help/';
  const page = withAddresses(PAGE, name, site);
  const found = [...page.matchAll(/(?:href|src)="([^"]*)"/g)].map(
    ([, address = '']) => new URL(address, `https://range.example${shown}`).href,
  );
  expect(found).toEqual([
    'https://range.example/help/about/',
    'https://range.example/help/_astro/x.js',
    'https://other/',
  ]);
});

test('a site at the top of its host needs no folder', () => {
  expect(withAddresses(PAGE, '404.html', 'https://range.example')).toContain('href="/about/"');
});

test.each([
  ['<img srcset="/a.png 1x, /b.png 2x">', 'srcset'],
  ['<img srcset="a.png 1x, /b.png 2x">', 'srcset'],
  ['<video title="a > b" poster="/a.png">', 'poster'],
  ["<form action='/go/'>", 'action'],
  ['<a href=/about/>', 'href'],
  ['<a data-next="/">', 'data-next'],
  ['<p style="background: url(/a.png)">', 'style'],
  ['<p style=\'background: url("/a.png")\'>', 'style'],
])('%s stops the build: it would break in a folder', (tag, attribute) => {
  const build = () =>
    withAddresses(`<p>Yes / no, /about/.</p>${tag}`, 'a/index.html', 'https://x.example');
  expect(build).toThrow(`a/index.html: ${attribute}=`);
  expect(build).toThrow('relative-addresses.ts');
});

test('text with a slash is no address', () => {
  const page =
    '<p title="Yes / no" class="a/b" content="a=b; //other/">Or "/x/" and href="/y/".</p>';
  expect(withAddresses(page, 'a/index.html', 'https://x.example')).toBe(page);
});
