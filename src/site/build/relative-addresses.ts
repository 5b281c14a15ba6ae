import { dirname, relative } from 'node:path/posix';

const TAG = /<[a-z](?:"[^"]*"|'[^']*'|[^'">])*>/gi;
/** The attributes whose addresses are made relative. */
const REWRITTEN = / (href|src|data-preview)="\/(?!\/)/g;
const ATTRIBUTE = /\s([^\s=>"'/]+)=(?:"([^"]*)"|'([^']*)'|([^\s>"']+))/g;
/** An address from the host's root, alone or in a list (`srcset`) or a style's `url(…)`. */
const FROM_ROOT = /(?:^|[\s,("'])\/(?![/\s])/;

/**
 * A page with every address made relative, so that it works from any folder of any host. The page
 * for unknown addresses is shown at any depth: its addresses begin with the folder that the firm's
 * own address names. A library for this (astro-relative-links) knows neither that page nor our
 * `data-preview`, and lets an attribute it does not know break sub-folders silently.
 *
 * @param name the page's file, seen from the built site, with slashes
 * @param site the firm's own address
 * @throws Error where another attribute holds an address from the host's root
 */
export function withAddresses(page: string, name: string, site: string): string {
  const up =
    name === '404.html'
      ? new URL(site).pathname.replace(/\/$/, '')
      : relative(dirname(name), '.') || '.';
  return page.replace(TAG, (tag) => {
    for (const [, attribute = '', ...values] of tag.replace(REWRITTEN, '').matchAll(ATTRIBUTE))
      if (FROM_ROOT.test(values.join('')))
        throw new Error(
          `${name}: ${attribute}="${values.join('')}" begins at the host's root, so the page breaks in a folder. ` +
            'Teach src/site/build/relative-addresses.ts the attribute, or write a relative address.',
        );
    return tag.replace(REWRITTEN, ` $1="${up}/`);
  });
}
