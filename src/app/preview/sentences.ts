/** Why a code could not be read, in words. */
import type { ReadProblem } from '../../note/types.ts';
import type { Words } from '../shared/words.ts';

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
  const { code } = problem;
  return {
    what: words.t(`errors:read.${code}.what`, facts),
    next: words.t(`errors:read.${code}.next`, facts),
  };
}
