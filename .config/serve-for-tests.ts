import { fileURLToPath } from 'node:url';
import { serve } from '../src/cli/serve.ts';

/**
 * Serves the built site on a free port for one Playwright run. The address reaches the workers as
 * `SITE_URL`. `SITE_DIR` names another built folder.
 */
export default async function serveForTests(): Promise<() => Promise<void>> {
  const dir = process.env['SITE_DIR'] ?? fileURLToPath(new URL('../dist', import.meta.url));
  const served = await serve({ dir, port: 0 });
  process.env['SITE_URL'] = served.url;
  process.env['SITE_DIR'] = dir;
  return served.close;
}
