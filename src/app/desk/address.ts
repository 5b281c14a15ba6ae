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

/** A time by the clock on this wall, to the minute: `2026-11-28T14:05`. */
export const minuteOf = (date: Date): string =>
  new Date(date.getTime() - date.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);

/** When the call of this address began, where the tab knows. */
function calledBefore(): string | undefined {
  const called = (history.state as { called?: unknown } | null)?.called;
  return typeof called === 'string' ? called : undefined;
}

/** Whether something about the caller was written before a reload; what was, is not kept. */
export function wasFilled(): boolean {
  return (history.state as { filled?: boolean } | null)?.filled === true;
}

/** The address follows the call; no one else writes it. @param guide where it must be named */
export function createAddress(
  guide: string | undefined,
  { edited }: Pick<JourneyStore, 'edited'>,
  { timer }: Pick<WaitStore, 'timer'>,
  { caller }: Pick<CallerState, 'caller'>,
) {
  const [noted, setNoted] = createSignal<Noted>({ details: {} });
  const [called, setCalled] = createSignal(calledBefore() ?? minuteOf(new Date()));
  const fragment = createMemo((): Fragment => {
    const { journey } = edited();
    const { details, error, made } = noted();
    return {
      journey,
      details,
      ...defined({ error: error === '' ? undefined : error, timer: timer() }),
      ...(journey.length > 0 ? defined({ guide, made }) : {}),
    };
  });
  createEffect(() => {
    replaceHash(fragmentHash(fragment()), {
      filled: Object.keys(caller()).length > 0,
      called: called(),
    });
  });
  return {
    fragment,
    /** When the call began. */
    called,
    begin: () => setCalled(minuteOf(new Date())),
    set: setNoted,
    note: (more: Partial<Noted>) => setNoted((now) => ({ ...now, ...more })),
  };
}
