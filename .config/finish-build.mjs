import { readFile, readdir, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { precompress } from '../src/cli/precompress.ts';
import { firm } from '../src/content/load.ts';
import { headersFile } from '../src/site/policy.ts';
import { frontPages } from './front-pages.mjs';
import { keepOffline } from './keep-offline.mjs';

/**
 * A page with every address made relative, so that it works from any folder of any host. The page
 * for unknown addresses is shown at any depth: its addresses begin with the folder that the firm's
 * own address names.
 *
 * @param {string} page @param {string} name its file, seen from the built site @param {string} site
 */
export function withAddresses(page, name, site) {
  const up =
    name === '404.html'
      ? new URL(site).pathname.replace(/\/$/, '')
      : relative(dirname(name), '.').split(sep).join('/') || '.';
  return page.replace(/ (href|src|data-preview)="\/(?!\/)/g, ` $1="${up}/`);
}

/**
 * What is left to do once the pages are written: first pages to choose from, relative addresses,
 * the headers file, the workers that keep the site for use with no network, and compressed copies.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function finishBuild() {
  return {
    name: 'finish-build',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const root = fileURLToPath(dir);
        await frontPages(root);
        const files = await readdir(root, { recursive: true });
        const pages = files.filter((file) => file.endsWith('.html'));
        for (const name of pages) {
          const page = await readFile(join(root, name), 'utf8');
          await writeFile(join(root, name), withAddresses(page, name, firm().site));
        }
        const previews = pages
          .map((page) => `/${page.split(sep).join('/')}`)
          .filter((page) => page.endsWith('/preview/index.html'))
          .map((page) => page.replace('index.html', ''));
        await writeFile(join(root, '_headers'), headersFile(previews));
        await keepOffline(root);
        await precompress(root);
      },
    },
  };
}
