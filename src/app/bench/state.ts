/** The bench's entries, kept in the address. */
import { createSignal, type Accessor } from 'solid-js';
import { replaceHash } from '../shared/replace-hash.ts';
import { formatEntries, parseEntries, type Entries, type Unit } from './entries.ts';

export interface BenchState {
  readonly entries: Accessor<Entries>;
  put(change: Partial<Entries>): void;
}

/** @param unit the firm's own, for an address that names none */
export function createBench(unit: Unit): BenchState {
  const read = () => parseEntries(location.hash, unit);
  const [entries, setEntries] = createSignal(read());
  addEventListener('hashchange', () => setEntries(read()));
  return {
    entries,
    put(change) {
      const next = { ...entries(), ...change };
      setEntries(next);
      replaceHash(formatEntries(next));
    },
  };
}
