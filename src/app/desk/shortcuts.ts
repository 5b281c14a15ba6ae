/** Single keys on the whole page, but in fields and on what they would press anyway. */
import { createSignal, onCleanup } from 'solid-js';
import type { Key } from '../shared/keys.ts';
import { actionOf, isField, isHeldDown, isPressable, type Action } from './keys.ts';

/** What a page does at its keys; `answer` is told which. */
export type Acts = Readonly<Partial<Record<Action['do'], (key: string) => void>>>;

/** A question before something that takes away: Enter is yes, and every other key no. */
export interface Sure {
  readonly ask: Key;
  readonly yes: () => void;
}

/** Where single keys are switched off, for as long as the tab lives (WCAG 2.1.4). */
const [shortcutsOn, turnShortcuts] = createSignal(true);
export { shortcutsOn, turnShortcuts };

export const focus = (id: string) => () => {
  document.getElementById(id)?.focus();
};

/** Listen for keys as long as the part is there. @param leave what Escape does in a field */
export function listen(acts: Acts, leave: () => void, sure?: SureState): void {
  const pressed = (event: KeyboardEvent): void => {
    const target = event.target instanceof HTMLElement ? event.target : document.body;
    if (event.defaultPrevented) return;
    const inField = isField(target.tagName, target instanceof HTMLInputElement ? target.type : '');
    if (sure?.asked() && !isHeldDown(event) && !target.closest('.sure')) {
      // In a field the key is still the field's.
      if (inField) sure.no();
      else {
        event.preventDefault();
        if (event.repeat) return;
        if (event.key === 'Enter') sure.yes();
        else sure.no();
        return;
      }
    }
    const action = actionOf(event);
    if (!action) return;
    const leaves = action.do === 'leave';
    if (inField) {
      if (!leaves) return;
      leave();
    } else {
      const pressesItself = action.do === 'tick' && isPressable(target.tagName);
      if (pressesItself || (!shortcutsOn() && !leaves)) return;
      const again = event.repeat && action.do !== 'back' && action.do !== 'forward';
      if (!again) acts[action.do]?.(action.do === 'answer' ? action.key : '');
    }
    event.preventDefault();
  };
  document.addEventListener('keydown', pressed);
  onCleanup(() => document.removeEventListener('keydown', pressed));
}

export type SureState = ReturnType<typeof createSure>;

export function createSure() {
  const [asked, setAsked] = createSignal<Sure>();
  return {
    asked,
    ask: (sure: Sure): void => void setAsked(sure),
    yes(): void {
      const sure = asked();
      setAsked(undefined);
      sure?.yes();
    },
    no: (): void => setAsked(undefined),
  };
}
