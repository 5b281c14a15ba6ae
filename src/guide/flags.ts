import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import type { GuideProblem } from './problem.ts';
import { flagsSchema } from './schema.ts';
import { shapeTroubles } from './shape.ts';
import type { Found } from './shape.ts';
import { readYaml } from './yaml.ts';

/** What a journey to a stop that leaves the breaker off raises. */
export const BREAKER_OFF = 'breaker-off';

/**
 * Read the safety flags from the text of `flags.yaml`, in the order of the file: it is the order
 * staff see them in. `file` is only copied into the problems.
 */
export function loadFlags(
  source: string,
  file: string,
): Result<readonly string[], readonly GuideProblem[]> {
  const text = readYaml(source);
  const problemsOf = (found: readonly Found[]): readonly GuideProblem[] =>
    found.map((trouble) => ({ ...trouble, file }));
  if (text.errors.length > 0)
    return fail(problemsOf(text.errors.map((error) => ({ code: 'yaml-syntax', ...error }))));
  const flags = flagsSchema.safeParse(text.value);
  if (!flags.success) return fail(problemsOf(shapeTroubles(flags.error, text, [])));
  const repeated = flags.data.flatMap((flag, index): Found[] =>
    flags.data.indexOf(flag) === index
      ? []
      : [{ code: 'flag-repeated', flag, place: text.valueAt([index]) }],
  );
  return repeated.length > 0 ? fail(problemsOf(repeated)) : ok(flags.data);
}
