import { fail } from '../result.ts';
import type { Result } from '../result.ts';
import { loadFlags } from './flags.ts';
import { joinGuides } from './join.ts';
import { loadPart, loadShared } from './load.ts';
import type { GuideProblem } from './problem.ts';
import type { Guide } from './types.ts';

/** A file's text, and its name for problems. */
export interface SourceFile {
  readonly source: string;
  readonly file: string;
}

/**
 * Read all guides of a copy, in the order given, with the danger pages and flags they share, and join
 * those that hand over to others. Every problem of every file is returned.
 */
export function loadGuides(
  files: readonly SourceFile[],
  sharedFile: SourceFile,
  flagsFile: SourceFile,
): Result<readonly Guide[], readonly GuideProblem[]> {
  const flags = loadFlags(flagsFile.source, flagsFile.file);
  if (!flags.ok) return flags;
  const shared = loadShared(sharedFile.source, sharedFile.file, flags.value);
  if (!shared.ok) return shared;
  const loaded = files.map(({ source, file }) => loadPart(source, file, shared.value));
  const problems = loaded.flatMap((one) => (one.ok ? [] : one.error));
  return problems.length > 0
    ? fail(problems)
    : joinGuides(loaded.flatMap((one) => (one.ok ? [one.value] : [])));
}
