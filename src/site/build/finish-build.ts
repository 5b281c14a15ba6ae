import { readFile, readdir, writeFile } from 'node:fs/promises';
import { join, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { AstroIntegration } from 'astro';
import { firm, languages, mainLanguage } from '../../content/load.ts';
import { address } from '../addresses.ts';
import { headersFile } from '../policy.ts';
import { frontPages } from './front-pages.ts';
import { keepOffline } from './keep-offline.ts';
import { precompress } from './precompress.ts';
import { ownStyles } from './inline-styles.ts';
import { markEnglish, tight } from './markup.ts';
import { withAddresses } from './relative-addresses.ts';

/**
 * What is left to do once the pages are written: first pages to choose from, styles in pages, relative addresses,
 * the headers file, the workers that keep the site for use with no network, and compressed copies.
 */
export function finishBuild(): AstroIntegration {
  return {
    name: 'finish-build',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const root = fileURLToPath(dir);
        await frontPages(root);
        const files = await readdir(root, { recursive: true });
        const pages = files
          .filter((file) => file.endsWith('.html'))
          .map((file) => file.split(sep).join('/'));
        const styles = new Set<string>();
        const withOwnStyle = ownStyles(root);
        const marks = new Map(languages().map((one) => [one, markEnglish(one)]));
        for (const name of pages) {
          const built = tight(await readFile(join(root, name), 'utf8'));
          const language =
            /^(?:index\.)?([a-z]{2})(?=\/|\.html$)/.exec(name)?.[1] ?? mainLanguage();
          const marked = marks.get(language)?.(built) ?? built;
          const { page, hash } = await withOwnStyle(name, marked);
          if (hash !== undefined) styles.add(hash);
          await writeFile(join(root, name), withAddresses(page, name, firm().site));
        }
        const previews = pages
          .filter((page) => `/${page}`.endsWith('/preview/index.html'))
          .map((page) => `/${page.replace('index.html', '')}`);
        const recalls = languages().map((language) => address(language, 'recall.json'));
        await writeFile(
          join(root, '_headers'),
          headersFile(previews, recalls, firm().frame, styles),
        );
        await keepOffline(root);
        await precompress(root, root.replace(/\.next\/?$/, '/'));
      },
    },
  };
}
