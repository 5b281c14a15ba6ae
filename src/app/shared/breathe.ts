/**
 * Lets the browser do what waits (input, painting) before the next piece of long work. By
 * `scheduler.yield` (Prioritized Task Scheduling, WICG), which goes on before other tasks of the
 * page; where a browser has none, by a task of its own.
 */
export function breathe(): Promise<void> {
  const { scheduler } = globalThis as { readonly scheduler?: Partial<Scheduler> };
  return scheduler?.yield?.() ?? new Promise((resolve) => setTimeout(resolve));
}

/** Resolves once what has changed is painted: what takes long and follows a tap comes after. */
export const painted = (): Promise<void> =>
  new Promise((resolve) => requestAnimationFrame(() => setTimeout(resolve)));
