import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { guides } from '../../content/load.ts';
import { withStyle } from '../policy.ts';

const SHEETS = /<link rel="stylesheet" href="\/([^"]+)">/g;

/** A page's address below its language's root. */
const pathOf = (name: string): string =>
  name.replace(/^[a-z]{2}\//, '').replace(/index(?:\.[a-z]{2})?\.html$/, '');

/**
 * A page that people come to first, or in danger, with its style in it: one round trip less before it
 * is painted. Others, mostly come to from these, share files: with their style in them guide pages
 * would be 2.7 times as large (brotli). A guide's start still loads the files, painted without them,
 * for what follows.
 *
 * @param root the built site
 * @param name the page's file, seen from there
 * @returns the page, and the style's hash as a policy says it
 */
export async function withOwnStyle(
  root: string,
  name: string,
  page: string,
): Promise<{ readonly page: string; readonly hash?: string }> {
  const path = pathOf(name);
  const starts = guides().map(({ id, start }) => `${id}/${start}/`);
  const dangers = guides().flatMap(({ id, exits }) => exits.map(({ to }) => `${id}/${to}/`));
  const sheets = [...page.matchAll(SHEETS)];
  const [[first] = ['']] = sheets;
  if (
    first === '' ||
    !(/^(?:care\/.*|note\/|preview\/)?$/.test(path) || [...starts, ...dangers].includes(path))
  )
    return { page };
  const files = sheets.map(([, file = '']) => readFile(join(root, file), 'utf8'));
  const style = (await Promise.all(files)).join('').replaceAll('\n', '');
  const hash = `'sha256-${createHash('sha256').update(style).digest('base64')}'`;
  const later = starts.includes(path)
    ? sheets.map(([link]) => link.replace('>', ' media="not all">'))
    : [];
  const inPlace = () => `<style>${style}</style>${later.join('')}`;
  return { page: withStyle(page.replace(first, inPlace).replace(SHEETS, ''), [hash]), hash };
}
