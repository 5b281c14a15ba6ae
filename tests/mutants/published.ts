/** How the proofs of the published guides do on copies with one slip each. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { content, guides } from '../../src/content/load.ts';
import { joinGuides } from '../../src/guide/join.ts';
import type { GuideSource } from '../../src/guide/join.ts';
import { loadPart } from '../../src/guide/load.ts';
import { meaningOf } from './meaning.ts';
import { mutantsOf } from './mutants.ts';
import { scoreOf } from './score.ts';
import type { Score } from './score.ts';
import type { Blocks } from '../../src/guide/blocks.ts';
import { writtenOut } from '../unit/guide/support/written-out.ts';
import type { Guide } from '../../src/guide/types.ts';

function read(path: string): string {
  return readFileSync(join(content().root, path), 'utf8');
}

function partsOf(blocks: Blocks): GuideSource[] {
  return guides().flatMap(({ id }) => {
    const file = `guides/${id}/graph.yaml`;
    const part = loadPart(read(file), file, blocks);
    return part.ok ? [part.value] : [];
  });
}

/** A guide of its text, joined with the other published ones. */
function joined(source: string, id: string, parts: readonly GuideSource[]): Guide | undefined {
  const part = loadPart(source, 'graph.yaml');
  if (!part.ok) return undefined;
  const all = joinGuides([part.value, ...parts.filter(({ guide }) => guide.id !== id)]);
  return all.ok ? all.value[0] : undefined;
}

/**
 * The mutation score of each published guide; none for a guide that does not load.
 * @param most mutants judged of each kind of slip
 * @param only the one guide to judge
 */
export function* mutationScores(
  most: number,
  only?: string,
): Generator<{ guide: string; score: Score }> {
  const blocks = content().blocks();
  if (!blocks.ok) return;
  const parts = partsOf(blocks.value);
  for (const { file, guide } of parts) {
    if (only !== undefined && guide.id !== only) continue;
    const source = writtenOut(read(file), blocks.value);
    const load = (text: string): Guide | undefined => joined(text, guide.id, parts);
    const sound = load(source);
    if (sound)
      yield {
        guide: guide.id,
        score: scoreOf(mutantsOf(source), most, meaningOf(sound), load),
      };
  }
}
