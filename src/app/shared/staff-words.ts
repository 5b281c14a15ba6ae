/** What only staff read under names that content gives (`content-words.ts`): flags, the diagnosis. */
import { said } from './content-words.ts';
import type { Words } from './words.ts';

/** What a safety flag says. */
export function flagWords(words: Words, flag: string): string {
  return said(words, flag, 'preview', 'flags', flag);
}

/** What a made-up visit is called. */
export function demoName(words: Words, demo: string): string {
  return said(words, demo, 'preview', 'demo', 'list', demo);
}

/** What the diagnosis names. */
export type Kind =
  'faults' | 'checks' | 'places' | 'parts' | 'access' | 'tools' | 'skills' | 'cautions';

/** The name of something in the diagnosis: faults and checks are worded with the model. */
export function name(words: Words, kind: Kind, id: string): string {
  return kind === 'faults' || kind === 'checks'
    ? said(words, id, 'model', kind, id, 'name')
    : said(words, id, 'diagnosis', kind, id);
}

/** Several names in one line. */
export function names(words: Words, kind: Kind, ids: readonly string[]): string {
  return ids.map((id) => name(words, kind, id)).join('; ');
}

/** Why a fault does what is seen. */
export function faultReason(words: Words, fault: string): string {
  return said(words, '', 'model', 'faults', fault, 'why');
}

/** How a check is made, in order. */
export function checkSteps(words: Words, check: string): readonly string[] {
  const steps = words.content('model', 'checks', check, 'how');
  return (steps as readonly string[] | undefined) ?? [];
}

/** What a check's result is called. */
export function resultName(words: Words, check: string, result: string): string {
  return said(words, result, 'model', 'checks', check, 'results', result);
}
