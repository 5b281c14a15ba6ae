import { copyFile, readdir } from 'node:fs/promises';
import { existsSync } from 'node:fs';
import { join } from 'node:path';

/** The first page in another language than the default one, for the site's own address. */
export const FRONT_PAGE = /^index\.[a-z]{2}\.html$/;

/**
 * Copies every other language's first page to `index.<language>.html` at the top: a server that
 * chooses the language of `/` answers with it, without a redirect. Before addresses become
 * relative: at the top they are others than in the language's folder.
 *
 * @param root the built site
 */
export async function frontPages(root: string): Promise<void> {
  const folders = (await readdir(root)).filter((name) => /^[a-z]{2}$/.test(name));
  for (const language of folders) {
    const page = join(root, language, 'index.html');
    if (existsSync(page)) await copyFile(page, join(root, `index.${language}.html`));
  }
}
