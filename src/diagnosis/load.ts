import { readYaml } from '../guide/yaml.ts';
import type { SourceFile } from '../guide/yaml.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { isRecord } from '../guide/shape.ts';
import { buildModel } from './build-model.ts';
import { crossCheck } from './cross-check.ts';
import type { Context } from './cross-check.ts';
import type { ModelProblem, Report } from './problem.ts';
import { modelFile } from './schema.ts';
import type { ModelFile } from './schema.ts';
import type { Costs, Model } from './types.ts';

/**
 * Reads the files of a model, each of which has some of its parts by name. Succeeds with the
 * authors' form, or fails with every problem found, each with its file and place.
 */
export function loadFigures(
  files: readonly SourceFile[],
  context: Context = {},
): Result<ModelFile, readonly ModelProblem[]> {
  const texts = files.map(({ source, file }) => ({ file, ...readYaml(source) }));
  const broken = texts.flatMap(({ file, errors }) =>
    errors.map(({ reason, place, first }) => ({
      file,
      place,
      path: '',
      code: 'not-yaml' as const,
      facts: { yaml: reason, ...(first ? { first: first.line } : {}) },
    })),
  );
  if (broken.length > 0) return fail(broken);
  const [first] = texts;
  if (!first) throw new RangeError('a model of no file');
  const problems: ModelProblem[] = [];
  const report: Report = (path, code, facts = {}) => {
    // What no file has is missing in the first.
    const of = texts.find(({ value }) => isRecord(value) && String(path[0]) in value) ?? first;
    const place = of.valueAt(path);
    problems.push({ file: of.file, place, path: path.join('.'), code, facts });
  };
  const parts = texts.flatMap(({ value }) => (isRecord(value) ? Object.entries(value) : []));
  parts.forEach(([name], index) => {
    if (parts.findIndex(([other]) => other === name) < index) report([name], 'twice', { name });
  });
  const parsed = modelFile.safeParse(Object.fromEntries(parts));
  if (!parsed.success)
    for (const { path, code } of parsed.error.issues) report(path, 'wrong-shape', { issue: code });
  else if (problems.length === 0) crossCheck(parsed.data, context, report);
  return parsed.success && problems.length === 0 ? ok(parsed.data) : fail(problems);
}

/** The same as the model that everything else reads. */
export function loadModel(
  files: readonly SourceFile[],
  context: Context = {},
  costs?: Costs,
): Result<Model, readonly ModelProblem[]> {
  const figures = loadFigures(files, context);
  return figures.ok ? ok(buildModel(figures.value, costs)) : figures;
}
