import { isScalar, parseDocument } from 'yaml';
import type { Change } from './learn.ts';

/** The text of a file of figures with the changes of its own parts made; all else stays to the letter. */
export function rewritten(source: string, changes: readonly Change[]): string {
  const document = parseDocument(source);
  const figures = changes.flatMap(({ paths, after }) =>
    paths.flatMap((path, index) => {
      if (!document.has(path[0])) return [];
      const node = document.getIn(path, true);
      if (!isScalar(node) || !node.range) throw new Error(`no figure at ${path.join('.')}`);
      const [start, end] = node.range;
      return { start, end, text: String(after[index]) };
    }),
  );
  // From the last to the first, so that the places before stay where they are.
  return figures
    .toSorted((a, b) => b.start - a.start)
    .reduce(
      (text, { start, end, text: figure }) => text.slice(0, start) + figure + text.slice(end),
      source,
    );
}
