/** Data that a page loads when it needs it; a failure is data too, and can be tried again. */
import { createEffect, createMemo, createSignal, untrack, type Accessor } from 'solid-js';
import { fail, ok, type Result } from '../../result.ts';

/** Why there is no data: no network, another answer than the file, or half a file. */
export type FetchProblem =
  | { readonly code: 'unreachable' }
  | { readonly code: 'refused'; readonly status: number }
  | { readonly code: 'unreadable' };

/** Fetch JSON of our own build. Never throws. */
export async function fetchData(url: string): Promise<Result<unknown, FetchProblem>> {
  const response = await fetch(url).catch(() => undefined);
  if (!response) return fail({ code: 'unreachable' });
  if (!response.ok) return fail({ code: 'refused', status: response.status });
  try {
    return ok((await response.json()) as unknown);
  } catch {
    return fail({ code: 'unreadable' });
  }
}

export interface Fetched<T> {
  /** What the address holds; undefined until it is there. */
  readonly value: Accessor<T | undefined>;
  readonly problem: Accessor<FetchProblem | undefined>;
  readonly retry: () => void;
}

/**
 * The data of an address that may change; what has come is kept, and late answers for an address
 * no longer wanted are let go. Trusted as our own build's: its shape is not checked.
 */
export function createFetched<T>(address: Accessor<string | undefined>): Fetched<T> {
  const url = createMemo(address);
  const [known, setKnown] = createSignal<Readonly<Record<string, Result<T, FetchProblem>>>>({});
  const load = async (wanted: string): Promise<void> => {
    const result = (await fetchData(wanted)) as Result<T, FetchProblem>;
    setKnown((all) => ({ ...all, [wanted]: result }));
  };
  createEffect(() => {
    const wanted = url();
    // What is there already must not come as a new object: whoever shows it would begin anew.
    if (wanted !== undefined && !untrack(known)[wanted]?.ok) void load(wanted);
  });
  const now = () => {
    const wanted = url();
    return wanted === undefined ? undefined : known()[wanted];
  };
  return {
    value: () => {
      const found = now();
      return found?.ok === true ? found.value : undefined;
    },
    problem: () => {
      const found = now();
      return found?.ok === false ? found.error : undefined;
    },
    retry() {
      const wanted = url();
      if (wanted === undefined) return;
      setKnown((all) =>
        Object.fromEntries(Object.entries(all).filter(([other]) => other !== wanted)),
      );
      void load(wanted);
    },
  };
}
