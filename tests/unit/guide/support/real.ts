import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadGuide } from '../../../../src/guide/load.ts';
import type { GuideSentences } from '../../../../src/guide/prove/sentences.ts';
import type { Guide } from '../../../../src/guide/types.ts';

function read(path: string): string {
  return readFileSync(fileURLToPath(new URL(`../../../../${path}`, import.meta.url)), 'utf8');
}

/** The published guide's file, as its authors write it. */
export const realSource = read('content/guides/door-locked/graph.yaml');

/** The published guide. */
export function realGuide(): Guide {
  const loaded = loadGuide(realSource, 'graph.yaml');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

/** Its English sentences. */
export const realSentences = JSON.parse(read('content/text/en/door-locked.json')) as GuideSentences;
