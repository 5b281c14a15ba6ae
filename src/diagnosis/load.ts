import { LineCounter, parseDocument } from 'yaml';
import type { Document } from 'yaml';
import type { Guide } from '../guide/types.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { buildModel } from './build-model.ts';
import { crossCheck } from './cross-check.ts';
import type { ModelProblem, Report } from './problem.ts';
import { faultsFile } from './schema.ts';
import type { Model } from './types.ts';

/** What the evidence keys are checked against; left out, that check is left out. */
export interface Context {
  readonly guide?: Pick<Guide, 'nodes'>;
  /** The optional details and their answers, as in `content/details.yaml`. */
  readonly details?: Readonly<Record<string, readonly string[]>>;
}

function lineOf(document: Document, counter: LineCounter, path: readonly (string | number)[]) {
  // The deepest part of the path that exists: a missing key has no place of its own.
  for (let length = path.length; length > 0; length--) {
    const node = document.getIn(path.slice(0, length), true);
    const range = (node as { range?: readonly number[] } | undefined)?.range;
    if (range) return { line: counter.linePos(range[0]!).line };
  }
  return {};
}

/**
 * Reads a `faults.yaml`. `file` is only its name for the problems. Succeeds with
 * the model, or fails with every problem found, each with its line.
 */
export function loadModel(
  source: string,
  file: string,
  context: Context = {},
): Result<Model, readonly ModelProblem[]> {
  const counter = new LineCounter();
  const document = parseDocument(source, { lineCounter: counter });
  if (document.errors.length > 0)
    return fail(
      document.errors.map(({ code, pos }) => ({
        file,
        line: counter.linePos(pos[0]).line,
        place: '',
        code: 'not-yaml' as const,
        facts: { yaml: code },
      })),
    );

  const problems: ModelProblem[] = [];
  const report: Report = (path, code, facts = {}) =>
    problems.push({
      file,
      ...lineOf(document, counter, path),
      place: path.join('.'),
      code,
      facts,
    });

  const parsed = faultsFile.safeParse(document.toJS());
  if (!parsed.success)
    for (const issue of parsed.error.issues)
      report(
        issue.path.map((part) => (typeof part === 'symbol' ? String(part) : part)),
        'wrong-shape',
        {
          issue: issue.code,
        },
      );
  else crossCheck(parsed.data, context, report);

  return parsed.success && problems.length === 0 ? ok(buildModel(parsed.data)) : fail(problems);
}
