import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../', import.meta.url));

/** Absolute path of a file named from the top folder. */
export function inRoot(path: string): string {
  return `${root}${path}`;
}
