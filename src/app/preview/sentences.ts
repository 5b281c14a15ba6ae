/** Facts in words. A frozen name may have lost its sentence; then the name itself stands. */
import type { Graph, GraphNode } from '../../guide/types.ts';
import type { ReadProblem } from '../../note/types.ts';
import type { Words } from '../shared/words.ts';

/** The preview's sentences for a part of the preview on another page. */
export function asPreview(words: Words): Words {
  return {
    ...words,
    t: (key, facts) => words.t(key.includes(':') ? key : `preview:${key}`, facts),
  };
}

/** The first of some keys that has a sentence, or the name itself. */
export function firstOf(words: Words, keys: readonly string[], name: string): string {
  const key = keys.find((candidate) => words.has(candidate));
  return key === undefined ? name : words.t(key);
}

/** What a guide is called; its id where the site no longer has it. */
export function guideName(words: Words, guide: string): string {
  return firstOf(words, [`guides:names.${guide}`], guide);
}

export function shortOf(words: Words, guide: Graph, node: GraphNode): string {
  return firstOf(words, [`${guide.id}:${node.sentences}.short`], node.sentences);
}

/** A sign as it can be shown: anything but plain ASCII by its number, as it may hide or turn. */
function shown(text: string): string {
  const signs = [...text].slice(0, 24);
  return signs
    .map((sign) =>
      /^[!-~]$/.test(sign)
        ? sign
        : `U+${(sign.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`,
    )
    .join(' ')
    .replace(/(?<=^|[!-~]) (?=[!-~](?: |$))/g, '');
}

/** Why a code was refused and what to do next, for the page's language. */
export function problemWords(
  words: Words,
  problem: ReadProblem,
): { readonly what: string; readonly next: string } {
  const facts: Record<string, string | number> = {};
  for (const [name, value] of Object.entries(problem) as [string, string | number | number[]][])
    facts[name] = Array.isArray(value)
      ? new Intl.ListFormat(words.language, { type: 'disjunction' }).format(value.map(String))
      : value;
  if ('given' in problem) facts['count'] = problem.given;
  if (problem.code === 'bad-symbol') facts['character'] = shown(problem.character);
  if (problem.code === 'bad-word') facts['word'] = shown(problem.word);
  if (problem.code === 'impossible')
    facts['field'] = words.t(`errors:read.impossible.fields.${problem.field}`);
  const key = `errors:read.${problem.code}`;
  return { what: words.t(`${key}.what`, facts), next: words.t(`${key}.next`, facts) };
}
