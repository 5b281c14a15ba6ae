// The built site as files.
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

/** The folder under test; `SITE_DIR` names another. */
export const dist =
  process.env['SITE_DIR'] ?? fileURLToPath(new URL('../../dist', import.meta.url));

/** A page's markup, by its address from the root. */
export const markup = (path: string): string =>
  readFileSync(join(dist, path.endsWith('/') ? `${path}index.html` : path), 'utf8');

/** The attributes of each element of a name, in order; the build writes them in double quotes. */
export function elements(html: string, name: string): ReadonlyMap<string, string>[] {
  return [...html.matchAll(new RegExp(`<${name}(\\s[^>]*)?>`, 'g'))].map(
    ([, text = '']) =>
      new Map(
        [...text.matchAll(/([\w-]+)(?:="([^"]*)")?/g)].map(([, key = '', value = '']) => [
          key,
          value.replaceAll('&amp;', '&').replaceAll('&#39;', "'"),
        ]),
      ),
  );
}

/** Where a link of a page leads: path and fragment, from the site's root. */
export function target(path: string, href: string): { path: string; hash: string } {
  const url = new URL(href, `https://range.example${path}`);
  return { path: url.origin === 'https://range.example' ? url.pathname : href, hash: url.hash };
}

/** The hashes of the styles that stand in a page, as a policy says them (CSP 3, section 2.3.1). */
export const hashesIn = (html: string): string[] =>
  [...html.matchAll(/<style>(.*?)<\/style>/gs)].map(
    ([, style = '']) => `'sha256-${createHash('sha256').update(style).digest('base64')}'`,
  );
