import { readFile, readdir, writeFile } from 'node:fs/promises';
import { dirname, join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { policy } from '../src/ui/policy.ts';

const headers = `/*
  Content-Security-Policy: ${policy}; frame-ancestors 'none'
  Referrer-Policy: no-referrer
  X-Content-Type-Options: nosniff
  Permissions-Policy: camera=(self), microphone=(), geolocation=()
/_astro/*
  Cache-Control: public, max-age=31536000, immutable
`;

/**
 * Makes every address in the built pages relative, so that the site works from any
 * folder of any host, and writes the headers file. The page for unknown addresses is
 * shown at any depth and keeps addresses from the root.
 *
 * @returns {import('astro').AstroIntegration}
 */
export function finishBuild() {
  return {
    name: 'finish-build',
    hooks: {
      'astro:build:done': async ({ dir }) => {
        const root = fileURLToPath(dir);
        const files = await readdir(root, { recursive: true });
        for (const name of files.filter((file) => file.endsWith('.html') && file !== '404.html')) {
          const file = join(root, name);
          const up = relative(dirname(file), root).split(sep).join('/') || '.';
          const page = await readFile(file, 'utf8');
          await writeFile(file, page.replace(/ (href|src)="\/(?!\/)/g, ` $1="${up}/`));
        }
        await writeFile(join(root, '_headers'), headers);
      },
    },
  };
}
