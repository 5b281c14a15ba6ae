import { fail } from '../result.ts';
import type { Result } from '../result.ts';
import { joinGuides } from './join.ts';
import { loadPart } from './load.ts';
import type { Blocks } from './blocks.ts';
import type { GuideProblem } from './problem.ts';
import type { Guide } from './types.ts';
import type { SourceFile } from './yaml.ts';

/**
 * Read all guides of a copy, in the order given, with the pages of blocks that they take, and join
 * those that hand over to others. Every problem of every file is returned.
 * @param off the switches that are off
 */
export function loadGuides(
  files: readonly SourceFile[],
  blocks: Blocks,
  off?: ReadonlySet<string>,
): Result<readonly Guide[], readonly GuideProblem[]> {
  const loaded = files.map(({ source, file }) => loadPart(source, file, blocks, off));
  const problems = loaded.flatMap((one) => (one.ok ? [] : one.error));
  return problems.length > 0
    ? fail(problems)
    : joinGuides(loaded.flatMap((one) => (one.ok ? [one.value] : [])));
}
