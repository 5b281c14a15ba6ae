/** The bench's entries, kept in the address. */
import { createSignal } from 'solid-js';
import { replaceHash } from '../shared/replace-hash.ts';
import { formatEntries, parseEntries, type Entries, type Unit } from './entries.ts';

export type BenchState = ReturnType<typeof createBench>;

/** @param unit the firm's own, for an address that names none */
export function createBench(unit: Unit) {
  const read = () => parseEntries(location.hash, unit);
  const [entries, setEntries] = createSignal(read());
  addEventListener('hashchange', () => setEntries(read()));
  return {
    entries,
    put(change: Partial<Entries>): void {
      const next = { ...entries(), ...change };
      setEntries(next);
      replaceHash(formatEntries(next));
    },
  };
}
