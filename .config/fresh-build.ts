// Builds the site where `dist` is older than what it is made of, or not whole; silent where not.
import { spawnSync } from 'node:child_process';
import { readdirSync, statSync } from 'node:fs';
import { join } from 'node:path';

const SOURCES = ['src', 'content', 'public', '.config', 'astro.config.mjs', 'package-lock.json'];
/** Among the last files that the build writes. */
const MADE = 'dist/sw.js';

/** When something at this path was changed last, in milliseconds; a file taken away changes its folder. */
function changed(path: string): number {
  const found = statSync(path);
  if (!found.isDirectory()) return found.mtimeMs;
  return Math.max(found.mtimeMs, ...readdirSync(path).map((name) => changed(join(path, name))));
}

const made = statSync(MADE, { throwIfNoEntry: false })?.mtimeMs ?? 0;
if (Math.max(...SOURCES.map(changed)) > made) {
  console.log('dist is older than its sources: building …');
  process.exitCode = spawnSync('npm run -s build', { shell: true, stdio: 'inherit' }).status ?? 1;
}
