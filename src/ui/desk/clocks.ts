import { createEffect, createMemo, createSignal, on, onCleanup, type Accessor } from 'solid-js';
import type { DeskState } from './state.ts';

export interface Clocks {
  /** Milliseconds since 1970, anew each second. */
  readonly now: Accessor<number>;
  /** Seconds the call has taken, and those on the step in the middle. */
  readonly call: Accessor<number>;
  readonly step: Accessor<number>;
}

/** Time is always worked out from the clock, never counted: a sleeping tab loses none. */
export function createClocks(desk: DeskState): Clocks {
  const [now, setNow] = createSignal(Date.now());
  const timer = setInterval(() => setNow(Date.now()), 1000);
  onCleanup(() => clearInterval(timer));
  const since = (what: Accessor<unknown>): Accessor<number> => {
    const [from, setFrom] = createSignal(Date.now());
    createEffect(on(what, () => setFrom(Date.now()), { defer: true }));
    return () => Math.max(0, Math.floor((now() - from()) / 1000));
  };
  const spot = createMemo(() => {
    const view = desk.view();
    return view.kind === 'at' ? `${desk.node().id} ${String(view.index)}` : view.kind;
  });
  // Whoever listens to the page hears what is to be said next.
  createEffect(on(spot, () => document.getElementById('desk-say')?.focus(), { defer: true }));
  return {
    now,
    call: since(desk.number),
    step: since(createMemo(() => `${spot()} ${String(desk.number())}`)),
  };
}
