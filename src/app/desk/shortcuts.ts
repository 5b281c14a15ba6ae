/** Single keys on the whole page, but in fields and on what they would press anyway. */
import { createSignal, onCleanup } from 'solid-js';
import { actionOf, isField, isPressable, type Action } from './keys.ts';
import type { Form } from './outcome.ts';
import type { DeskState } from './state.ts';

export type Shortcuts = ReturnType<typeof createShortcuts>;

const focus = (id: string) => () => {
  document.getElementById(id)?.focus();
};

type Doing = Record<Exclude<Action['do'], 'answer'>, () => void>;

function doing(desk: DeskState, copy: (form: Form) => void): Doing {
  const place = (): number => {
    const view = desk.journey.view();
    return view.kind === 'at' ? view.index : desk.journey.length();
  };
  return {
    unsure: () => desk.journey.press('0'),
    tick: () => desk.journey.tick(),
    back: () => desk.journey.go(place() - 1),
    forward: () => desk.journey.go(place() + 1),
    leave() {
      desk.stay();
      desk.journey.show('now');
    },
    danger: () => desk.journey.show('danger'),
    codeIn: () => desk.journey.show('code'),
    timer: () => desk.wait.start(),
    clear: () => desk.clearCaller(),
    next: () => (desk.endAsked() ? desk.end() : desk.askEnd()),
    job: () => copy('text'),
    json: () => copy('json'),
    codeOut: focus('desk-back'),
    caller: focus('desk-name'),
    details: () => document.querySelector<HTMLElement>('.details select')?.focus(),
    error: focus('desk-error'),
  };
}

/** Listen for keys as long as the desk is there. */
export function createShortcuts(desk: DeskState, copy: (form: Form) => void) {
  const [on, setOn] = createSignal(true);
  const acts = doing(desk, copy);
  const pressed = (event: KeyboardEvent): void => {
    const target = event.target instanceof HTMLElement ? event.target : document.body;
    const action = actionOf(event);
    if (event.defaultPrevented || !action) return;
    const leaves = action.do === 'leave';
    if (isField(target.tagName, target instanceof HTMLInputElement ? target.type : '')) {
      if (!leaves) return;
      // From a field Escape goes back to what is to be said; the call stays as it is.
      if (desk.journey.view().kind === 'code') desk.journey.show('now');
      else focus('desk-say')();
    } else {
      const pressesItself = action.do === 'tick' && isPressable(target.tagName);
      if (pressesItself || (!on() && !leaves)) return;
      if (action.do === 'answer') desk.journey.press(action.key);
      else acts[action.do]();
    }
    event.preventDefault();
  };
  document.addEventListener('keydown', pressed);
  onCleanup(() => document.removeEventListener('keydown', pressed));
  return { on, turn: setOn };
}
