import { spawn } from 'node:child_process';
import { mkdtemp, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Row } from './row.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));

function build(outDir: string): Promise<void> {
  return new Promise((done, failed) => {
    const child = spawn('astro', ['build', '--outDir', outDir], {
      cwd: ROOT,
      stdio: ['ignore', 'ignore', 'inherit'],
      env: { ...process.env, ASTRO_TELEMETRY_DISABLED: '1' },
    });
    child.once('error', failed);
    child.once('close', (code) => {
      if (code === 0) done();
      else failed(new Error(`astro build ended with ${String(code)}`));
    });
  });
}

/** Time, pages and bytes of one build of the whole site, into a folder of its own. */
export async function benchBuild(): Promise<Row[]> {
  const outDir = await mkdtemp(join(tmpdir(), 'hobnote-build-'));
  try {
    const from = performance.now();
    await build(outDir);
    const seconds = (performance.now() - from) / 1000;
    const files = (await readdir(outDir, { recursive: true, withFileTypes: true })).filter(
      (entry) => entry.isFile(),
    );
    const sizes = await Promise.all(
      files.map(async ({ parentPath, name }) => (await stat(join(parentPath, name))).size),
    );
    const pages = files.filter(({ name }) => name.endsWith('.html')).length;
    return [
      { name: 'build', value: seconds, unit: 's', ceiling: 60, note: `${String(pages)} pages` },
      {
        name: 'built site',
        value: sizes.reduce((sum, size) => sum + size, 0) / 1000,
        unit: 'kB',
        note: `${String(files.length)} files, not compressed`,
      },
    ];
  } finally {
    await rm(outDir, { recursive: true });
  }
}
