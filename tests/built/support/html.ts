// Pages as browsers read them: parse5 follows the HTML standard's parser to the letter.
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse, type DefaultTreeAdapterTypes as Tree } from 'parse5';

export type Element = Tree.Element;

const DIST = fileURLToPath(new URL('../../../dist/', import.meta.url));

/** The files of all pages, seen from the built site, with slashes. */
export function pageFiles(): string[] {
  if (!existsSync(join(DIST, 'index.html'))) throw new Error('Build first: npm run build');
  return readdirSync(DIST, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.html'))
    .map((entry) => relative(DIST, join(entry.parentPath, entry.name)).split(sep).join('/'))
    .toSorted();
}

export const has = (file: string): boolean => existsSync(join(DIST, file));
export const textOf = (file: string): string => readFileSync(join(DIST, file), 'utf8');

/** The address of a page's file from the built site's root. */
export const addressOf = (file: string): string => `/${file.replace(/(^|\/)index\.html$/, '$1')}`;

/** Where a link on a page leads, from the built site's root; an address elsewhere as it is. */
export function resolve(page: string, href: string): string {
  const root = 'https://built.example';
  return new URL(href, root + page).href.replace(root, '');
}

/** All elements in an element, in their order; what stands in templates and `noscript` left out. */
export function within(parent: Tree.ParentNode): Element[] {
  return parent.childNodes.flatMap((child) =>
    'tagName' in child ? [child, ...within(child)] : [],
  );
}

/** All elements of a page. */
export const elements = (html: string): Element[] => within(parse(html));

export const attribute = (element: Element | undefined, name: string): string | undefined =>
  element?.attrs.find((one) => one.name === name)?.value;

export const classes = (element: Element | undefined): string[] =>
  (attribute(element, 'class') ?? '').split(' ').filter((one) => one !== '');

/** An element's text, spaces as one. */
export function said(element: Element): string {
  const parts = (node: Tree.ParentNode): string =>
    node.childNodes
      .map((child) => ('value' in child ? child.value : 'childNodes' in child ? parts(child) : ''))
      .join('');
  return parts(element).replace(/\s+/g, ' ').trim();
}
