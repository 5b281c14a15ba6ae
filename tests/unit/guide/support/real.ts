import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadGuide, loadShared } from '../../../../src/guide/load.ts';
import { writtenOut } from '../../../../src/guide/shared.ts';
import type { GuideSentences } from '../../../../src/proof/sentences.ts';
import type { Guide } from '../../../../src/guide/types.ts';
import { joinedText } from '../../../../src/content/texts.ts';

function read(path: string): string {
  return readFileSync(fileURLToPath(new URL(`../../../../${path}`, import.meta.url)), 'utf8');
}

/** The published danger pages that guides share. */
export const realShared = (() => {
  const loaded = loadShared(read('content/guides/shared.yaml'), 'shared.yaml');
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
})();

/** The published guide's file, the shared pages written out in it. */
export const realSource = writtenOut(read('content/guides/door-locked/graph.yaml'), realShared);

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
