import { fileURLToPath } from 'node:url';
import type { Plugin } from 'vite';

const stand = fileURLToPath(new URL('../../app/shared/templates.ts', import.meta.url));

/**
 * Gives the parts that run in the browser our own `solid-js/web`, which makes markup by a Trusted
 * Types policy of its own.
 */
export function trustedTemplates(): Plugin {
  return {
    name: 'trusted-templates',
    enforce: 'pre',
    applyToEnvironment: (environment) => environment.name === 'client',
    resolveId: (source, importer) =>
      source === 'solid-js/web' && importer !== stand ? stand : undefined,
  };
}
