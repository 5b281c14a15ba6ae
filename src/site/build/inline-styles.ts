import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { guides } from '../../content/load.ts';
import { eachOnce } from '../../once.ts';
import { withStyle } from '../policy.ts';

const SHEETS = /<link rel="stylesheet" href="\/([^"]+)">/g;

/** A page's address below its language's root. */
const pathOf = (name: string): string =>
  name.replace(/^[a-z]{2}\//, '').replace(/index(?:\.[a-z]{2})?\.html$/, '');

/**
 * Pages that people come to first, or in danger, get their style in them: one round trip less before
 * they are painted. Others, mostly come to from these, share files: with their style in them guide
 * pages would be 2.7 times as large (brotli). A guide's start still loads the files, painted without
 * them, for what follows.
 *
 * @param root the built site
 * @returns of a page, by its file seen from there: the page, and the style's hash as a policy says it
 */
export function ownStyles(
  root: string,
): (name: string, page: string) => Promise<{ readonly page: string; readonly hash?: string }> {
  const starts = new Set(guides().map(({ id, start }) => `${id}/${start}/`));
  const dangers = new Set(
    guides().flatMap(({ id, exits }) => exits.map(({ to }) => `${id}/${to}/`)),
  );
  const read = eachOnce((file: string) => readFile(join(root, file), 'utf8'));
  return async (name, page) => {
    const path = pathOf(name);
    const isFirst = /^(?:care\/.*|note\/|preview\/)?$/.test(path);
    const sheets = [...page.matchAll(SHEETS)];
    const [[first] = ['']] = sheets;
    if (first === '' || !(isFirst || starts.has(path) || dangers.has(path))) return { page };
    const style = (await Promise.all(sheets.map(([, file = '']) => read(file))))
      .join('')
      .replaceAll('\n', '');
    const hash = `'sha256-${createHash('sha256').update(style).digest('base64')}'`;
    const later = starts.has(path)
      ? sheets.map(([link]) => link.replace('>', ' media="not all">'))
      : [];
    const inPlace = () => `<style>${style}</style>${later.join('')}`;
    return { page: withStyle(page.replace(first, inPlace).replace(SHEETS, ''), [hash]), hash };
  };
}
