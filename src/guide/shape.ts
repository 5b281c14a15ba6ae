import type { z } from 'zod';
import type { GuideProblem, GuideTrouble, SourcePosition } from './problem.ts';
import type { Path, YamlText } from './yaml.ts';

/** A trouble and where it is; the loader adds the file. */
export type Found = GuideTrouble & { readonly place: SourcePosition };

/** Troubles as problems of a file, in its order. */
export function inOrder(found: readonly Found[], file: string): GuideProblem[] {
  return found
    .map((trouble) => ({ ...trouble, file }))
    .toSorted((a, b) => a.place.line - b.place.line || a.place.column - b.place.column);
}

export function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function at(value: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (inner, key) =>
      typeof inner === 'object' && inner !== null
        ? (inner as Record<PropertyKey, unknown>)[key]
        : undefined,
    value,
  );
}

/** Turn what the schema library found into our own troubles with their places. */
export function shapeTroubles(error: z.ZodError, text: YamlText, base: Path): Found[] {
  return error.issues.flatMap((issue): Found[] => {
    const full = [...base, ...issue.path];
    const path = full.map(String).join('.');
    switch (issue.code) {
      case 'unrecognized_keys':
        return issue.keys.map((key) => ({
          code: 'key-unknown',
          path,
          key,
          place: text.keyAt([...full, key]),
        }));
      case 'invalid_key':
        return [
          {
            code: 'name-malformed',
            path: full.slice(0, -1).map(String).join('.'),
            name: String(issue.path.at(-1)),
            place: text.keyAt(full),
          },
        ];
      case 'invalid_format':
        return [
          {
            code: 'name-malformed',
            path,
            name: String(at(text.value, full)),
            place: text.valueAt(full),
          },
        ];
      default:
    }
    if (full.length > 0 && at(text.value, full) === undefined) {
      const parent = full.slice(0, -1).map(String).join('.');
      return [
        {
          code: 'key-missing',
          path: parent,
          key: String(full.at(-1)),
          place: text.keyAt(full.slice(0, -1)),
        },
      ];
    }
    const place = text.valueAt(full);
    if (issue.code === 'invalid_value')
      return [{ code: 'value-unknown', path, allowed: issue.values.map(String), place }];
    if (issue.code === 'invalid_union' && issue.discriminator !== undefined)
      return [
        { code: 'value-unknown', path, allowed: ['question', 'step', 'stop', 'finish'], place },
      ];
    const expected =
      issue.code === 'invalid_type'
        ? issue.expected
        : issue.code === 'invalid_union'
          ? full.at(-1) === 'timer'
            ? 'timer'
            : 'name-or-map'
          : issue.code;
    return [{ code: 'value-wrong', path, expected, place }];
  });
}
