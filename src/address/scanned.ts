import { parseRaw } from './grammar.ts';

/**
 * What a scanned text says to the preview: a fragment to read where it is an
 * address, else the text as a code; undefined for an address without a code.
 */
export function scanned(text: string): { fragment: string } | { code: string } | undefined {
  const at = text.indexOf('#');
  if (at < 0) return text.includes(':') ? undefined : { code: text };
  const fragment = text.slice(at);
  return parseRaw(fragment).c === undefined ? undefined : { fragment };
}
