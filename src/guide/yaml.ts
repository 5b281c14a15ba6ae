import { LineCounter, isCollection, isMap, isNode, isScalar, parseDocument, visit } from 'yaml';
import type { Document, Node } from 'yaml';
import type { SourcePosition } from './problem.ts';

/** Keys and indexes from the top of a file down to a value. */
export type Path = readonly PropertyKey[];

/** A file's text, and its name for problems. */
export interface SourceFile {
  readonly source: string;
  readonly file: string;
}

/** A YAML text as plain values, with the way back from a value to its place. */
export interface YamlText {
  readonly value: unknown;
  /** Where the key at `path` stands, or the nearest thing around it that exists. */
  readonly keyAt: (path: Path) => SourcePosition;
  /** Where the value at `path` stands, or the nearest thing around it that exists. */
  readonly valueAt: (path: Path) => SourcePosition;
  /** What keeps the text from being read; then `value` is undefined. */
  readonly errors: readonly SyntaxFault[];
}

/** A slip of syntax. */
export interface SyntaxFault {
  /** The parser's own code, or ALIAS, ANCHOR or MERGE_KEY, which are YAML but not taken here. */
  readonly reason: string;
  readonly place: SourcePosition;
  /** Of a key given twice (DUPLICATE_KEY): where it stands first. */
  readonly first?: SourcePosition;
}

/** What makes a value depend on another place of the file: nobody sees it where it is read. */
function indirections(
  document: Document,
  placeAt: (offset: number) => SourcePosition,
): SyntaxFault[] {
  const found: SyntaxFault[] = [];
  const add = (reason: string, node: Node): void => {
    found.push({ reason, place: placeAt(node.range?.[0] ?? 0) });
  };
  visit(document, {
    Alias: (_, node) => add('ALIAS', node),
    Value: (key, node) => {
      if (node.anchor !== undefined) add('ANCHOR', node);
      if (key === 'key' && isScalar(node) && node.value === '<<') add('MERGE_KEY', node);
    },
  });
  return found;
}

/** Where a key that stands at an offset for the second time stands first. */
function firstKey(document: Document, offset: number): number | undefined {
  let first: number | undefined;
  visit(document, {
    Map: (_, { items }) => {
      const keys = items.flatMap(({ key }) => (isScalar(key) ? [key] : []));
      const again = keys.find(({ range }) => range?.[0] === offset);
      if (!again) return undefined;
      first = keys.find(({ value }) => value === again.value)?.range?.[0];
      return visit.BREAK;
    },
  });
  return first;
}

const known = new Map<string, YamlText>();
/** Read YAML 1.2 and keep the places; a text read lately is not read again. Never throws. */
export function readYaml(source: string): YamlText {
  const read = known.get(source) ?? parsed(source);
  if (known.size === 200) known.clear(); // Content has fewer files.
  known.set(source, read);
  return read;
}

function parsed(source: string): YamlText {
  const lines = new LineCounter();
  // What it would warn of, lists as keys say, is told as a wrong name with its place.
  const document = parseDocument(source, {
    lineCounter: lines,
    prettyErrors: false,
    logLevel: 'error',
  });

  function placeAt(offset: number): SourcePosition {
    const position = lines.linePos(offset);
    return { line: Math.max(1, position.line), column: Math.max(1, position.col) };
  }
  const placeOf = (node: Node | undefined): SourcePosition => placeAt(node?.range?.[0] ?? 0);

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

  const errors = [
    ...document.errors.map(({ code, pos: [offset] }): SyntaxFault => {
      const first = code === 'DUPLICATE_KEY' ? firstKey(document, offset) : undefined;
      return {
        reason: code,
        place: placeAt(offset),
        ...(first === undefined ? {} : { first: placeAt(first) }),
      };
    }),
    ...indirections(document, placeAt),
  ];
  return {
    value: errors.length > 0 ? undefined : (document.toJS() as unknown),
    keyAt: (path) => placeOf(find(path).key),
    valueAt: (path) => placeOf(find(path).value),
    errors,
  };
}
