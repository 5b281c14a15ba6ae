import { prove } from '../../src/proof/prove.ts';
import type { Guide } from '../../src/guide/types.ts';
import type { Meaning } from './meaning.ts';
import type { Mutant } from './mutants.ts';
import { everyState } from './truth.ts';

/** How a guide's proof did on copies of it with one slip each. */
export interface Score {
  readonly mutants: number;
  /** Refused by the loader: never published. */
  readonly refused: number;
  /** Let through by the loader, and unsafe by what the answers mean. */
  readonly unsafe: number;
  readonly caught: number;
  /** Failed by the proof although what the answers mean is still safe. */
  readonly strict: number;
  /** Unsafe and not caught. */
  readonly missed: readonly string[];
}

export const noScore: Score = {
  mutants: 0,
  refused: 0,
  unsafe: 0,
  caught: 0,
  strict: 0,
  missed: [],
};

/** A score with one more spoiled guide in it; none where the loader refused it. */
export function judged(
  score: Score,
  name: string,
  guide: Guide | undefined,
  meaning: Meaning,
): Score {
  const mutants = score.mutants + 1;
  if (!guide) return { ...score, mutants, refused: score.refused + 1 };
  const { broken } = everyState(guide, meaning);
  const { holds } = prove(guide);
  if (broken.size === 0) return { ...score, mutants, strict: score.strict + (holds ? 0 : 1) };
  return {
    ...score,
    mutants,
    unsafe: score.unsafe + 1,
    caught: score.caught + (holds ? 0 : 1),
    missed: holds ? [...score.missed, `${name}: ${[...broken].join(', ')}`] : score.missed,
  };
}

/**
 * Judge at most some `most` mutants of each kind of slip, spread evenly over all of that kind.
 * @param load the spoiled file as a guide, joined where it hands over
 */
export function scoreOf(
  mutants: readonly Mutant[],
  most: number,
  meaning: Meaning,
  load: (source: string) => Guide | undefined,
): Score {
  let score = noScore;
  for (const slip of new Set(mutants.map((mutant) => mutant.slip))) {
    const all = mutants.filter((mutant) => mutant.slip === slip);
    // An even stride would come upon the same few targets again and again.
    const stride = Math.ceil(all.length / most) | 1;
    for (const { name, source } of all.filter((_, index) => index % stride === 0))
      score = judged(score, `${slip}: ${name}`, load(source()), meaning);
  }
  return score;
}

/** A guide's mutation score in one line. */
export function scoreLine({ mutants, refused, unsafe, caught, strict }: Score): string {
  const share = unsafe === 0 ? '' : ` (${((100 * caught) / unsafe).toFixed(1)} %)`;
  return (
    `${mutants} copies with one slip. Refused by the loader ${refused}; unsafe ${unsafe}, ` +
    `caught ${caught}${share}; failed though still safe ${strict}.`
  );
}
