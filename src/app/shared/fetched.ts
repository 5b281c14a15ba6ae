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
 * The data of addresses that may change, all of it or none; what has come is kept, and late answers
 * for an address no longer wanted are let go. Trusted as our own build's: its shape is not checked.
 */
export function createAllFetched<T>(addresses: Accessor<readonly string[]>): Fetched<readonly T[]> {
  const urls = createMemo(addresses);
  const [known, setKnown] = createSignal<Readonly<Record<string, Result<T, FetchProblem>>>>({});
  const load = async (wanted: string): Promise<void> => {
    const result = (await fetchData(wanted)) as Result<T, FetchProblem>;
    setKnown((all) => ({ ...all, [wanted]: result }));
  };
  createEffect(() => {
    // What is there already must not come as a new object: whoever shows it would begin anew.
    for (const wanted of urls()) if (!untrack(known)[wanted]?.ok) void load(wanted);
  });
  const now = () => urls().map((wanted) => known()[wanted]);
  const failed = () => now().find((found) => found?.ok === false);
  const all = createMemo(
    () => {
      const values = now().flatMap((found) => (found?.ok === true ? [found.value] : []));
      return values.length === urls().length ? values : undefined;
    },
    undefined,
    {
      equals: (a, b) =>
        a === b || (a?.length === b?.length && !!a?.every((one, i) => one === b?.[i])),
    },
  );
  return {
    value: all,
    problem: () => {
      const found = failed();
      return found?.ok === false ? found.error : undefined;
    },
    retry() {
      const again = urls().filter((wanted) => known()[wanted]?.ok === false);
      setKnown((all) =>
        Object.fromEntries(Object.entries(all).filter(([other]) => !again.includes(other))),
      );
      for (const wanted of again) void load(wanted);
    },
  };
}

/** The same of one address. */
export function createFetched<T>(address: Accessor<string | undefined>): Fetched<T> {
  const all = createAllFetched<T>(() => {
    const wanted = address();
    return wanted === undefined ? [] : [wanted];
  });
  return { ...all, value: () => all.value()?.[0] };
}
