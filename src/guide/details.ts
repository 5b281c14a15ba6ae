import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import type { GuideProblem } from './problem.ts';
import { detailsSchema } from './schema.ts';
import { shapeTroubles } from './shape.ts';
import type { Found } from './shape.ts';
import { readYaml } from './yaml.ts';

/** An optional question for the technician; the order of `answers` is part of the note code. */
export interface Detail {
  readonly id: string;
  readonly answers: readonly string[];
}

/**
 * Read the optional details, in the order of the file, from the text of
 * `details.yaml`. `file` is only copied into the problems.
 */
export function loadDetails(
  source: string,
  file: string,
): Result<readonly Detail[], readonly GuideProblem[]> {
  const text = readYaml(source);
  const problemsOf = (found: readonly Found[]): readonly GuideProblem[] =>
    found.map((trouble) => ({ ...trouble, file }));
  if (text.errors.length > 0)
    return fail(problemsOf(text.errors.map((error) => ({ code: 'yaml-syntax', ...error }))));
  const details = detailsSchema.safeParse(text.value);
  if (!details.success) return fail(problemsOf(shapeTroubles(details.error, text, [])));
  return ok(Object.entries(details.data).map(([id, answers]) => ({ id, answers })));
}
