import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { loadGuide } from '../../../../src/guide/load.ts';
import type { GuideSentences } from '../../../../src/proof/sentences.ts';
import type { Guide } from '../../../../src/guide/types.ts';
import { content } from '../../../../src/content/load.ts';
import { joinedText } from '../../../../src/content/texts.ts';
import { writtenOut } from './written-out.ts';

function read(path: string): string {
  return readFileSync(fileURLToPath(new URL(`../../../../${path}`, import.meta.url)), 'utf8');
}

/** The published blocks. */
export const realBlocks = (() => {
  const loaded = content().blocks();
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
})();

/** The published guide's file, the blocks' pages written out in it. */
export const realSource = writtenOut(read('content/guides/door-locked/graph.yaml'), realBlocks);

/** The published guide. */
export function realGuide(): Guide {
  const loaded = loadGuide(read('content/guides/door-locked/graph.yaml'), 'graph.yaml', realBlocks);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

/** Its English sentences. */
export const realSentences = joinedText(
  realGuide(),
  JSON.parse(read('content/text/en/blocks.json')) as GuideSentences,
  (guide) => JSON.parse(read(`content/text/en/${guide}.json`)) as GuideSentences,
);
