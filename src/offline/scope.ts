/**
 * The parts of a service worker's surroundings used here. TypeScript's own `webworker`
 * library cannot stand beside `DOM`, which every other file of the site needs.
 */
export interface WorkerClient {
  /** Stays the same for the life of a tab's page. */
  readonly id: string;
  readonly url: string;
  postMessage(message: string): void;
}

interface Lasting extends Event {
  /** Keeps the worker alive, and the event's phase open, until the promise settles. */
  waitUntil(until: Promise<unknown>): void;
}

export interface Fetching extends Lasting {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}

export interface Told extends Lasting {
  readonly data: unknown;
  readonly source: WorkerClient | null;
}

/** Service Workers, W3C Candidate Recommendation, section 4: the names are its own. */
export interface WorkerScope {
  readonly registration: { readonly scope: string };
  readonly clients: {
    matchAll(which: {
      readonly includeUncontrolled: boolean;
      readonly type: 'window';
    }): Promise<readonly WorkerClient[]>;
    claim(): Promise<void>;
  };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listen: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', listen: (event: Fetching) => void): void;
  addEventListener(type: 'message', listen: (event: Told) => void): void;
}
