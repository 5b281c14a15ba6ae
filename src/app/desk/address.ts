/** What of a call rides in the address: nothing about the caller. */
import { createEffect, createMemo, createSignal } from 'solid-js';
import { defined } from '../../defined.ts';
import { fragmentHash, type Fragment } from '../../address/fragment.ts';
import { replaceHash } from '../shared/replace-hash.ts';
import type { CallerState } from './caller.ts';
import type { JourneyStore } from './journey.ts';
import type { WaitStore } from './wait.ts';

/** What the code holds besides the journey. */
export type Noted = Pick<Fragment, 'details' | 'error' | 'made'>;

/** What the tab remembers of a call besides its address; nothing of the caller. */
interface Remembered {
  readonly filled?: unknown;
  readonly began?: unknown;
}
const remembered = (): Remembered => (history.state as Remembered | null) ?? {};

/** When the call of this address began, in milliseconds since 1970, where the tab knows. */
export function beganBefore(): number | undefined {
  const { began } = remembered();
  return typeof began === 'number' ? began : undefined;
}

/** Whether something about the caller was written before a reload; what was, is not kept. */
export function wasFilled(): boolean {
  return remembered().filled === true;
}

/**
 * The address follows the call; no one else writes it.
 * @param guide where it must be named
 * @param told the details that the answers tell by themselves
 */
export function createAddress(
  guide: string | undefined,
  { edited }: Pick<JourneyStore, 'edited'>,
  told: () => Fragment['details'],
  { timer }: Pick<WaitStore, 'timer'>,
  { caller }: Pick<CallerState, 'caller'>,
  began: number,
) {
  const [noted, setNoted] = createSignal<Noted>({ details: {} });
  const fragment = createMemo((): Fragment => {
    const { journey } = edited();
    const { details, error, made } = noted();
    return {
      journey,
      details: { ...told(), ...details },
      ...defined({ error: error === '' ? undefined : error, timer: timer() }),
      ...(journey.length > 0 ? defined({ guide, made }) : {}),
    };
  });
  createEffect(() => {
    replaceHash(fragmentHash(fragment()), { filled: Object.keys(caller()).length > 0, began });
  });
  const set = (next: Noted): void => {
    // What the answers tell by themselves goes with them when they change.
    const own = Object.entries(next.details).filter(([id, answer]) => told()[id] !== answer);
    setNoted({ ...next, details: Object.fromEntries(own) });
  };
  return {
    fragment,
    set,
    note: (more: Partial<Noted>) => set({ ...noted(), ...more }),
  };
}
