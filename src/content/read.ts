/** One file of content as values, with the way back from a value to its place. */
import { readYaml } from '../guide/yaml.ts';
import { once } from '../once.ts';
import type { Path, SyntaxFault } from '../guide/yaml.ts';
import type { SourcePosition } from '../guide/problem.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import type { Problem } from './problem.ts';

export interface Text {
  /** As problems name it. */
  readonly file: string;
  readonly value: unknown;
  readonly keyAt: (path: Path) => SourcePosition;
  readonly valueAt: (path: Path) => SourcePosition;
}

export const TOP: SourcePosition = { line: 1, column: 1 };

/** A slip of syntax as a problem of its file. */
export function syntaxProblem(file: string, { reason, place, first }: SyntaxFault): Problem {
  return {
    file,
    place,
    about: 'file',
    trouble:
      reason === 'DUPLICATE_KEY'
        ? { code: 'duplicate-key', first: first?.line ?? 1 }
        : { code: 'syntax', reason },
  };
}

function parsedJson(source: string): Result<unknown, SyntaxFault> {
  try {
    return ok(JSON.parse(source));
  } catch (error) {
    const reason = error instanceof Error ? error.message : 'not JSON';
    // The engine's words name the place, except where the text just ends.
    const [, line, column] = /line (\d+) column (\d+)/.exec(reason) ?? [];
    const lines = source.trimEnd().split('\n').length;
    return fail({ reason, place: { line: Number(line ?? lines), column: Number(column ?? 1) } });
  }
}

/** How many keys the objects of a value have together. */
function keysIn(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 0;
  const own = Array.isArray(value) ? 0 : Object.keys(value).length;
  return Object.values(value).reduce<number>((sum, inner) => sum + keysIn(inner), own);
}

/** How many keys a JSON text writes: a key is a string before a colon, and no other string is. */
function keysWritten(json: string): number {
  return [...json.matchAll(/"(?:[^"\\]|\\.)*"(\s*:)?/g)].filter(([, colon]) => colon).length;
}

/**
 * Parse the text of a file: JSON by its name, YAML else. Refuses keys given twice, which
 * `JSON.parse` takes without a word, and YAML's aliases, anchors and merge keys.
 */
export function parseText(source: string, file: string): Result<Text, readonly Problem[]> {
  // JSON is YAML, so places of both come from the same parser. It is ten times as slow as the
  // engine's own: for JSON it runs only where a place is asked for or a key is written twice.
  const yaml = once(() => readYaml(source));
  const json = file.endsWith('.json') ? parsedJson(source) : undefined;
  if (json && !json.ok) return fail([syntaxProblem(file, json.error)]);
  if (json && keysWritten(source) === keysIn(json.value)) {
    const keyAt: Text['keyAt'] = (path) => yaml().keyAt(path);
    return ok({ file, value: json.value, keyAt, valueAt: (path) => yaml().valueAt(path) });
  }
  const { errors, ...text } = yaml();
  return errors.length > 0
    ? fail(errors.map((one) => syntaxProblem(file, one)))
    : ok({ file, ...text });
}
