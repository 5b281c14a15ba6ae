/** The kinds of a built site's files, by the ending of their names; nothing else is for readers. */
export const TYPES: ReadonlyMap<string, string> = new Map([
  ['.html', 'text/html'],
  ['.css', 'text/css'],
  ['.js', 'text/javascript'],
  ['.txt', 'text/plain'],
  ['.csv', 'text/csv'],
  ['.json', 'application/json'],
  ['.webmanifest', 'application/manifest+json'],
  ['.svg', 'image/svg+xml'],
  ['.png', 'image/png'],
]);

/** One block of a `_headers` file: a path pattern and the headers it adds. */
export interface HeaderRule {
  /** Path pattern; `*` stands for any run of characters. */
  readonly pattern: string;
  readonly headers: readonly (readonly [name: string, value: string])[];
}

/**
 * Reads the plain `_headers` format several static hosts share: a path pattern at the start of a
 * line, under it indented `Name: value` lines; blank lines and `#` comments are skipped.
 *
 * @throws Error naming the line when a line is neither; a header silently lost could be the
 * content security policy.
 */
export function parseHeaders(text: string): HeaderRule[] {
  const rules: { pattern: string; headers: (readonly [string, string])[] }[] = [];
  for (const [index, line] of text.split(/\r?\n/).entries()) {
    if (line.trim() === '' || line.trimStart().startsWith('#')) continue;
    if (line.startsWith('/')) {
      rules.push({ pattern: line.trim(), headers: [] });
      continue;
    }
    const [, name, value] = /^\s+([A-Za-z0-9-]+)\s*:\s*(\S.*?)\s*$/.exec(line) ?? [];
    const rule = rules.at(-1);
    if (name === undefined || value === undefined || rule === undefined)
      throw new Error(
        `_headers, line ${String(index + 1)}: expected a path starting with "/" or an indented "Name: value", found ${JSON.stringify(line)}`,
      );
    rule.headers.push([name, value]);
  }
  return rules;
}

function matches(pattern: string, path: string): boolean {
  const source = pattern.split('*').map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, '\\$&'));
  // Paths with escapes decoded may hold line feeds, too.
  return new RegExp(`^${source.join('.*')}$`, 's').test(path);
}

/**
 * The headers of one path. Every matching block counts; values of the same header are joined by a
 * comma in file order, as the hosts that read this format do (RFC 9110, section 5.3).
 */
export function headersFor(rules: readonly HeaderRule[], path: string): Map<string, string> {
  const result = new Map<string, string>();
  for (const rule of rules.filter(({ pattern }) => matches(pattern, path)))
    for (const [name, value] of rule.headers) {
      const key = name.toLowerCase();
      const before = result.get(key);
      result.set(key, before === undefined ? value : `${before}, ${value}`);
    }
  return result;
}
