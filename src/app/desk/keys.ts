/** What each single key does. Pure, so that it can be tried without a page. */
import type { Words } from '../shared/words.ts';

export const letters = {
  danger: 'd',
  timer: 't',
  codeIn: 'k',
  codeOut: 'c',
  caller: 'p',
  details: 'o',
  error: 'e',
  job: 'j',
  json: 's',
  link: 'l',
  ahead: 'a',
  language: 'g',
  hold: 'h',
  calls: 'b',
  undo: 'u',
  also: 'w',
  clear: 'x',
  next: 'n',
} as const;
export type Letter = keyof typeof letters;
/** What has a letter, in the order shown. */
export const letterActions = Object.keys(letters) as Letter[];

/** The keys of a node's answers, in order: the row of digits, and the key behind 0, which is "not sure". */
export const answerKeys = [...'123456789-'];

export type Action =
  | { readonly do: 'answer'; readonly key: string }
  | { readonly do: 'unsure' | 'tick' | 'back' | 'forward' | 'leave' | 'keys' | Letter };

/** Every key with what it does, in the order shown; `forward` is told with `back`. */
export function keysTold(t: Words['t']) {
  return [
    ['1–9 -', 'answer'] as const,
    ['0', 'unsure'] as const,
    [t('desk:keys.space'), 'tick'] as const,
    ['← →', 'back'] as const,
    [t('desk:keys.esc'), 'leave'] as const,
    ...letterActions.map((action) => [letters[action].toUpperCase(), action] as const),
  ];
}

/** What of a `KeyboardEvent` counts. */
export interface Pressed {
  readonly key: string;
  /** The key's place on the board, `KeyD`. */
  readonly code: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly isComposing: boolean;
}

const named: Readonly<Record<string, Action>> = {
  '0': { do: 'unsure' },
  '?': { do: 'keys' },
  ' ': { do: 'tick' },
  Enter: { do: 'tick' },
  Backspace: { do: 'back' },
  ArrowLeft: { do: 'back' },
  ArrowRight: { do: 'forward' },
  Escape: { do: 'leave' },
};

const byLetter = new Map<string, Letter>(letterActions.map((action) => [letters[action], action]));

/** The action of a key; undefined where it is the browser's. */
export function actionOf(pressed: Pressed): Action | undefined {
  if (pressed.ctrlKey || pressed.metaKey || pressed.altKey || pressed.isComposing) return undefined;
  const { key, code } = pressed;
  if (Object.hasOwn(named, key)) return named[key];
  if (answerKeys.includes(key)) return { do: 'answer', key };
  // On a board of another script the place of the key decides.
  const letter = /^[ -~]$/.test(key) ? key.toLowerCase() : code.replace(/^Key/, '').toLowerCase();
  const action = byLetter.get(letter);
  return action && { do: action };
}

/** A key that only changes what others do. */
export function isHeldDown({ key, ctrlKey, metaKey, altKey }: Pressed): boolean {
  return ctrlKey || metaKey || altKey || ['Shift', 'CapsLock', 'Tab'].includes(key);
}

/** Where typing belongs to the field: there only Escape is the desk's. */
export function isField(tag: string, type: string): boolean {
  if (tag === 'TEXTAREA' || tag === 'SELECT') return true;
  return tag === 'INPUT' && type !== 'checkbox' && type !== 'radio';
}

/** What Space and Enter press themselves. */
export function isPressable(tag: string): boolean {
  return ['A', 'BUTTON', 'SUMMARY', 'INPUT'].includes(tag);
}
