import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { stringify } from 'yaml';
import { loadGuide, loadShared } from '../../../../src/guide/load.ts';
import { withShared } from '../../../../src/guide/shared.ts';
import type { GuideSentences } from '../../../../src/guide/prove/sentences.ts';
import type { Guide } from '../../../../src/guide/types.ts';
import { readYaml } from '../../../../src/guide/yaml.ts';
import { joinedText } from '../../../../src/text/shared-text.ts';

function read(path: string): string {
  return readFileSync(fileURLToPath(new URL(`../../../../${path}`, import.meta.url)), 'utf8');
}

/** The published danger pages that guides share. */
export const realShared = (() => {
  const loaded = loadShared(read('content/guides/shared.yaml'), 'shared.yaml');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
})();

/** A published guide's file with the shared pages written out in it: no other file is needed. */
export function sourceOf(name: string): string {
  const text = withShared(readYaml(read(`content/guides/${name}/graph.yaml`)), realShared);
  const { dangers: _, ...whole } = text.value as Record<string, unknown>;
  return stringify(whole);
}

/** The published guide's file, whole. */
export const realSource = sourceOf('door-locked');

/** The published guide. */
export function realGuide(): Guide {
  const loaded = loadGuide(read('content/guides/door-locked/graph.yaml'), 'graph.yaml', realShared);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

/** Its English sentences. */
export const realSentences = joinedText(
  realGuide(),
  JSON.parse(read('content/text/en/shared.json')) as GuideSentences,
  (guide) => JSON.parse(read(`content/text/en/${guide}.json`)) as GuideSentences,
);
