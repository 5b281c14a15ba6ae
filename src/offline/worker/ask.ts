/** Asks the site for `recall.json`. */
import { parseRecall, type Recall } from '../recall.ts';

/** How long the network may take before it counts as missing, in milliseconds. */
const LIMIT = 3000;
/** How long an answer stands for a page that was opened with it, in milliseconds. */
const STANDS = 600_000;

/** A limit for a fetch; the platform's own is not in every browser that keeps the site. */
export function within(milliseconds: number): { signal: AbortSignal; stop: () => void } {
  const control = new AbortController();
  const timer = setTimeout(() => {
    control.abort();
  }, milliseconds);
  return {
    signal: control.signal,
    stop: () => {
      clearTimeout(timer);
    },
  };
}

let pending: Promise<Recall | undefined> | undefined;
let settledAt = 0;

async function fetched(scope: string): Promise<Recall | undefined> {
  const { signal, stop } = within(LIMIT);
  try {
    const response = await fetch(new URL('recall.json', scope), {
      ...{ cache: 'no-store', redirect: 'error', signal },
    });
    return response.ok ? parseRecall(await response.json()) : undefined;
  } catch {
    return undefined;
  } finally {
    stop();
    settledAt = Date.now();
    pending = undefined;
  }
}

/** What the site says now; undefined where it says nothing in time. Asked once at a time. */
export function ask(scope: string): Promise<Recall | undefined> {
  pending ??= fetched(scope);
  return pending;
}

/** Nothing is under way, and what was asked for last has come, or was found missing, lately. */
export const fresh = (): boolean => !pending && Date.now() - settledAt < STANDS;
