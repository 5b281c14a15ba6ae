import { readYaml } from '../guide/yaml.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { buildModel } from './build-model.ts';
import { crossCheck } from './cross-check.ts';
import type { Context } from './cross-check.ts';
import type { ModelProblem, Report } from './problem.ts';
import { faultsFile } from './schema.ts';
import type { FaultsFile } from './schema.ts';
import type { Model } from './types.ts';

/**
 * Reads the text of a `faults.yaml`. `file` is only copied into the problems.
 * Succeeds with the authors' form, or fails with every problem found, each with its place.
 */
export function loadFaults(
  source: string,
  file: string,
  context: Context = {},
): Result<FaultsFile, readonly ModelProblem[]> {
  const text = readYaml(source);
  if (text.errors.length > 0)
    return fail(
      text.errors.map(({ reason, place, first }) => ({
        file,
        place,
        path: '',
        code: 'not-yaml' as const,
        facts: { yaml: reason, ...(first ? { first: first.line } : {}) },
      })),
    );
  const problems: ModelProblem[] = [];
  const report: Report = (path, code, facts = {}) =>
    problems.push({ file, place: text.valueAt(path), path: path.join('.'), code, facts });

  const parsed = faultsFile.safeParse(text.value);
  if (!parsed.success) {
    for (const { path, code } of parsed.error.issues) report(path, 'wrong-shape', { issue: code });
    return fail(problems);
  }
  crossCheck(parsed.data, context, report);
  return problems.length > 0 ? fail(problems) : ok(parsed.data);
}

/** The same as the model that everything else reads. */
export function loadModel(
  source: string,
  file: string,
  context: Context = {},
): Result<Model, readonly ModelProblem[]> {
  const faults = loadFaults(source, file, context);
  return faults.ok ? ok(buildModel(faults.value)) : faults;
}
