import { formatValues, parseValues } from '../../address/grammar.ts';

/** What is typed on the sensor bench, and its place in the address's fragment. Pure. */
export type Unit = 'F' | 'C';

export const sensors = [1000, 100] as const;
export type R0 = (typeof sensors)[number];

/** The fields hold what was typed, right or wrong. */
export interface Entries {
  readonly ohms: string;
  readonly at: string;
  readonly added: string;
  readonly unit: Unit;
  readonly r0: R0;
}

export const fields = ['ohms', 'at', 'added'] as const;
export type Field = (typeof fields)[number];

const KEYS = [...fields, 'unit', 'r0'] as const;

/** Longer than any reading and than any slip worth keeping. */
const MAX_LENGTH = 40;

/** Read a fragment, with or without its `#`; what it lacks or spells wrong is as on an empty bench. */
export function parseEntries(hash: string, unit: Unit): Entries {
  const given = parseValues(hash, KEYS);
  const text = (field: Field) => [...(given[field] ?? '')].slice(0, MAX_LENGTH).join('');
  return {
    ohms: text('ohms'),
    at: text('at'),
    added: text('added'),
    unit: given.unit === 'F' || given.unit === 'C' ? given.unit : unit,
    r0: sensors.find((r0) => String(r0) === given.r0) ?? 1000,
  };
}

/** The fragment as `#…`. */
export function formatEntries(entries: Entries): string {
  return formatValues({ ...entries, r0: String(entries.r0) }, KEYS);
}
