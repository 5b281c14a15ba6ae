/**
 * What is known of the caller at hand. It stays in the tab's memory; only where the firm has switched
 * it on (`desk: keep-caller: tab`) does it also lie in the tab's session storage, for a reload.
 */
import { createSignal } from 'solid-js';
import { isRecord } from '../../guide/shape.ts';
import { withEntry } from '../shared/entry.ts';
import { tryStorage } from '../shared/storage.ts';
import { tidyCaller, type Caller, type CallerField } from '../../visit/job.ts';
import { keep, kept, type Keeper } from './keeper.ts';

export type CallerState = ReturnType<typeof createCaller>;

const KEY = 'hobnote.desk.caller';
const CLERK = 'hobnote.desk.clerk';

function read(keeper: Keeper): Caller {
  const value = kept(keeper, KEY);
  return isRecord(value) ? tidyCaller(value) : {};
}

/** @param fresh the tab begins anew: a copy from another call is not taken up, but removed */
export function createCaller(keeper: Keeper, fresh: boolean) {
  const before = fresh ? {} : read(keeper);
  const [caller, setCaller] = createSignal<Caller>(before);
  const load = (texts: Caller): void => {
    setCaller(texts);
    keep(keeper, KEY, Object.keys(texts).length === 0 ? undefined : texts);
  };
  if (fresh) load({});
  /** Of the staff, not of a caller: for every call of the tab, over a reload too. */
  const tab = tryStorage(() => sessionStorage);
  const name = kept(tab, CLERK);
  const [clerk, setClerk] = createSignal(typeof name === 'string' ? name : '');
  return {
    caller,
    /** Whether something was there from before a reload. */
    restored: Object.keys(before).length > 0,
    isEmpty: () => Object.keys(caller()).length === 0,
    set: (field: CallerField, text: string) => load(withEntry(caller(), field, text)),
    load,
    clear: () => load({}),
    clerk,
    setClerk(text: string): void {
      setClerk(text);
      keep(tab, CLERK, text || undefined);
    },
  };
}
