/** `content/safety.json`, which runs write a part of each. */
import { createHash } from 'node:crypto';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { format } from 'prettier';
import { content } from '../../src/content/load.ts';
import { safetySchema } from '../../src/content/schema/safety.ts';
import type { Safety } from '../../src/content/schema/safety.ts';

const file = join(content().root, 'safety.json');

/** The first 12 hex digits of the SHA-256 of a file of the project. */
export const hashOf = (path: string): string =>
  createHash('sha256').update(readFileSync(path)).digest('hex').slice(0, 12);

/** The exact version of a package that package.json asks for. */
export function versionIn(folder: string, name: string): string {
  const text = readFileSync(join(folder, 'node_modules', name, 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}

/** What a run of today says of itself. */
export const today = (programs: Readonly<Record<string, string>>) => ({
  on: new Date().toISOString().slice(0, 10),
  with: { Node: process.versions.node, ...programs },
});

/** What runs have found by now. */
export const results = (): Safety => JSON.parse(readFileSync(file, 'utf8')) as Safety;

/** Puts parts of the results in place of those of earlier runs. */
export async function write(parts: Partial<Safety>): Promise<void> {
  const all = safetySchema.parse({ ...results(), ...parts });
  writeFileSync(file, await format(JSON.stringify(all), { parser: 'json', printWidth: 100 }));
}
