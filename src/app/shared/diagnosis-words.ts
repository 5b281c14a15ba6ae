/** Names and sentences of the diagnosis, under names that content gives (`content-words.ts`). */
import { asLines, asText } from './content-words.ts';
import type { Words } from './words.ts';

/** The same words, a guide's own faults and checks (`<guide>.faults`) before the diagnosis'. */
export function forGuide(words: Words, guide: string): Words {
  return {
    ...words,
    content: (namespace, ...path) =>
      (namespace === 'diagnosis' ? words.content(`${guide}.faults`, ...path) : undefined) ??
      words.content(namespace, ...path),
  };
}

/** What the diagnosis names. */
export type Kind = 'faults' | 'checks' | 'parts' | 'access' | 'tools' | 'skills' | 'cautions';

/** The name of something in the diagnosis. */
export function name(words: Words, kind: Kind, id: string): string {
  const found = words.content('diagnosis', kind, id);
  return asText(found) ?? asText(words.content('diagnosis', kind, id, 'name')) ?? id;
}

/** Several names in one line. */
export function names(words: Words, kind: Kind, ids: readonly string[]): string {
  return ids.map((id) => name(words, kind, id)).join('; ');
}

/** Why a fault does what is seen. */
export function faultReason(words: Words, fault: string): string {
  return asText(words.content('diagnosis', 'faults', fault, 'why')) ?? '';
}

/** How a check is made, in order. */
export function checkSteps(words: Words, check: string): readonly string[] {
  return asLines(words.content('diagnosis', 'checks', check, 'how'));
}

/** What a check's result is called. */
export function resultName(words: Words, check: string, result: string): string {
  return asText(words.content('diagnosis', 'checks', check, 'results', result)) ?? result;
}
