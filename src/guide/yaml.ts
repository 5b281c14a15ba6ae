import { LineCounter, isCollection, isMap, isNode, isScalar, parseDocument } from 'yaml';
import type { Node } from 'yaml';
import type { Place } from './problem.ts';

/** Keys and indexes from the top of a file down to a value. */
export type Path = readonly PropertyKey[];

/** A YAML text as plain values, with the way back from a value to its place. */
export interface YamlText {
  readonly value: unknown;
  /** Where the key at `path` stands, or the nearest thing around it that exists. */
  readonly keyAt: (path: Path) => Place;
  /** Where the value at `path` stands, or the nearest thing around it that exists. */
  readonly valueAt: (path: Path) => Place;
  /** What keeps the text from being YAML, by the parser's own code. */
  readonly errors: readonly { readonly reason: string; readonly place: Place }[];
}

/** Read YAML 1.2 and keep the places. Never throws. */
export function readYaml(source: string): YamlText {
  const lines = new LineCounter();
  // What it would warn of, lists as keys say, is told as a wrong name with its place.
  const document = parseDocument(source, {
    lineCounter: lines,
    prettyErrors: false,
    logLevel: 'error',
  });

  function placeOf(node: Node | undefined): Place {
    const position = lines.linePos(node?.range?.[0] ?? 0);
    return { line: Math.max(1, position.line), column: Math.max(1, position.col) };
  }

  /** The deepest key and value that exist along the path. */
  function find(path: Path): { key: Node | undefined; value: Node | undefined } {
    let value: Node | undefined = document.contents ?? undefined;
    let key = value;
    for (const part of path) {
      if (!isCollection(value)) break;
      const pair = isMap(value)
        ? value.items.find((item) => isScalar(item.key) && String(item.key.value) === String(part))
        : undefined;
      const next: unknown = pair ? (pair.value ?? pair.key) : value.get(part, true);
      if (!isNode(next)) break;
      key = isNode(pair?.key) ? pair.key : next;
      value = next;
    }
    return { key, value };
  }

  const errors = document.errors.map((error) => {
    const position = lines.linePos(error.pos[0]);
    return { reason: error.code, place: { line: position.line, column: position.col } };
  });
  let value: unknown;
  try {
    value = document.toJS();
  } catch {
    // An alias without an anchor, or aliases nested to blow up the file.
    errors.push({ reason: 'BAD_ALIAS', place: { line: 1, column: 1 } });
  }
  return {
    value,
    keyAt: (path) => placeOf(find(path).key),
    valueAt: (path) => placeOf(find(path).value),
    errors,
  };
}
