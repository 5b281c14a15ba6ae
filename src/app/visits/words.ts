/** Kept visits and troubles with them, in the reader's words. */
import { NOTHING, OTHER } from '../../diagnosis/visits-schema.ts';
import { name } from '../shared/staff-words.ts';
import type { Words } from '../shared/words.ts';
import type { ImportProblem } from './stored.ts';
import type { StoreProblem } from './store.ts';

/** More lines of a refused file than this help nobody. */
const MOST = 5;

/** What a visit found: a fault of the figures, or that it is none of them. */
export function foundName(words: Words, fault: string): string {
  return fault === OTHER || fault === NOTHING
    ? words.t(`visits:record.${fault}`)
    : name(words, 'faults', fault);
}

export function problemLines(
  words: Words,
  problems: readonly (ImportProblem | StoreProblem)[],
): readonly string[] {
  const lines = problems.slice(0, MOST).map((problem) => {
    const facts = { ...problem };
    // A fault of the file as a whole has no path in it.
    if (problem.code === 'wrong-shape' && problem.path === '')
      return words.t('visits:problem.wrong-file');
    return words.t(`visits:problem.${problem.code}`, facts);
  });
  const more = problems.length - lines.length;
  return more > 0 ? [...lines, words.t('visits:problem.more', { count: more })] : lines;
}
