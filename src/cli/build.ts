// npm run build [-- FOLDER]: the site, built aside; only a whole one takes the place of the last.
import { spawnSync } from 'node:child_process';
import { existsSync, renameSync, rmSync } from 'node:fs';
import { resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

/**
 * Builds into a folder beside the site and swaps the two where that went well; where it did not,
 * the site stays as it was. Gates stop most slips before a page is made, but not a page that throws.
 *
 * @param build makes the folder; its exit status is 0 where all went well
 * @returns that status
 */
export function buildAside(site: string, build: (folder: string) => number): number {
  const [next, last] = [`${site}.next`, `${site}.last`];
  for (const stale of [next, last]) rmSync(stale, { recursive: true, force: true });
  const status = build(next);
  if (status !== 0) {
    rmSync(next, { recursive: true, force: true });
    return status;
  }
  if (existsSync(site)) renameSync(site, last);
  renameSync(next, site);
  rmSync(last, { recursive: true, force: true });
  return 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const site = resolve(process.argv[2] ?? 'dist');
  process.exitCode = buildAside(site, (folder) => {
    const env = { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' };
    const words = ['node_modules/astro/bin/astro.mjs', 'build', '--outDir', folder];
    const { status } = spawnSync(process.execPath, words, { stdio: 'inherit', env });
    if (status !== 0 && existsSync(site)) console.error('The last good build was left as it was.');
    return status ?? 1;
  });
}
