import { readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';

/** @param {string} id a module's file, and the folder of the package it is in, if in one */
const packageOf = (id) => /^.*node_modules\/(?:@[^/]+\/)?[^/]+(?=\/)/.exec(id)?.[0];

/** @param {string} folder name, version and licence text of a package */
function notice(folder) {
  /** @type {{ name: string, version: string, license: string }} */
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
  const file = readdirSync(folder).find((entry) => /^licen[cs]e/i.test(entry));
  if (file === undefined) throw new Error(`${name} is shipped and brings no licence text.`);
  return `${name} ${version} (${license})\n\n${readFileSync(join(folder, file), 'utf8').trim()}\n`;
}

/**
 * Writes `licences.txt`: the notices of every package that has code in what browsers load. Their
 * licences ask for them, and minified files no longer carry them.
 *
 * @returns {import('vite').Plugin}
 */
export function shippedLicences() {
  return {
    name: 'shipped-licences',
    applyToEnvironment: (environment) => environment.name === 'client',
    generateBundle(_, bundle) {
      const modules = Object.values(bundle).flatMap((one) =>
        one.type === 'chunk' ? one.moduleIds : [],
      );
      const folders = new Set(modules.map(packageOf).filter((folder) => folder !== undefined));
      const source = [...folders]
        .sort()
        .map(notice)
        .join(`\n${'-'.repeat(72)}\n\n`);
      this.emitFile({ type: 'asset', fileName: 'licences.txt', source });
    },
  };
}
