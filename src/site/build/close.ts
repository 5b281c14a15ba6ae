// npm run close [-- FOLDER]: what a firm that closes publishes instead of its site.
import { mkdir, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { firm, languageOf, languages, localeOf, releases } from '../../content/load.ts';
import { address } from '../addresses.ts';
import { headersFile } from '../policy.ts';
import { words } from '../words.ts';
import { bundle } from './keep-offline.ts';

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

function page(language: string): string {
  const { t } = words(language);
  const { phone, numbers } = firm();
  return `<!doctype html>
<html lang="${localeOf(language)}" dir="${languageOf(language).direction}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(t('offline:closed.title'))}</title>
<h1>${escaped(t('offline:closed.title'))}</h1>
<p>${escaped(t('offline:closed.why'))}</p>
<p><a href="tel:${phone.dial}">${escaped(t('offline:call'))}</a></p>
<p><a href="tel:${numbers.emergency.dial}">${escaped(t('site:danger.call'))}</a></p>
</html>
`;
}

/** Writes pages that say so, workers that remove the copies, and a recall of every release. */
export async function closeSite(dir: string): Promise<void> {
  const recall = JSON.stringify({ least: releases().length + 1, pages: [] });
  const worker = await bundle('closing.ts', {});
  for (const language of languages()) {
    const folder = join(dir, address(language, ''));
    await mkdir(folder, { recursive: true });
    await writeFile(join(folder, 'index.html'), page(language));
    await writeFile(join(folder, 'sw.js'), worker);
    await writeFile(join(folder, 'recall.json'), recall);
  }
  const [main = ''] = languages();
  await writeFile(join(dir, '404.html'), page(main));
  const recalls = languages().map((language) => address(language, 'recall.json'));
  await writeFile(join(dir, '_headers'), headersFile([], recalls, firm().frame));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [, , folder = 'closed'] = process.argv;
  await closeSite(folder);
  process.stdout.write(
    `Written: ${folder}. Publish it in place of the site, and leave it for a year.\n`,
  );
}
