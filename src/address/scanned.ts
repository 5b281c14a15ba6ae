/**
 * What a scanned text says to the preview: a fragment to read where it is an
 * address, else the text as a code; undefined for an address without a code.
 */
export function scanned(text: string): { fragment: string } | { code: string } | undefined {
  const hash = text.indexOf('#');
  if (hash >= 0 && new URLSearchParams(text.slice(hash + 1)).has('c'))
    return { fragment: text.slice(hash) };
  return hash >= 0 || text.includes(':') ? undefined : { code: text };
}
