/** What a page loads once it has something to show by it: code that a page without it need not weigh. */
import { createEffect, createSignal, on, type Accessor } from 'solid-js';
import type { Fetched } from './fetched.ts';

/**
 * @param wanted loads it, the first time that it is true
 * @param load rejects where it cannot be had; it can be tried again
 */
export function createLatePart<T>(wanted: Accessor<boolean>, load: () => Promise<T>): Fetched<T> {
  const [part, setPart] = createSignal<T>();
  const [lost, setLost] = createSignal(false);
  const retry = (): void => {
    setLost(false);
    load().then(
      (loaded) => setPart(() => loaded),
      () => setLost(true),
    );
  };
  createEffect(on(wanted, (is) => is && part() === undefined && retry()));
  return {
    value: part,
    problem: () => (lost() ? { code: 'unreachable' } : undefined),
    retry,
  };
}
