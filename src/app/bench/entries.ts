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

/** Longer than any reading and than any slip worth keeping. */
const MAX_LENGTH = 40;

/** Read a fragment, with or without its `#`; what it lacks or spells wrong is as on an empty bench. */
export function parseEntries(hash: string, unit: Unit): Entries {
  const params = new URLSearchParams(hash.replace(/^#/, ''));
  const text = (field: Field) => [...(params.get(field) ?? '')].slice(0, MAX_LENGTH).join('');
  const given = params.get('unit');
  return {
    ohms: text('ohms'),
    at: text('at'),
    added: text('added'),
    unit: given === 'F' || given === 'C' ? given : unit,
    r0: sensors.find((r0) => String(r0) === params.get('r0')) ?? 1000,
  };
}

/** The fragment without its `#`; empty when nothing is typed. */
export function formatEntries(entries: Entries): string {
  const typed = fields.filter((field) => entries[field] !== '');
  const params = new URLSearchParams(typed.map((field) => [field, entries[field]]));
  params.append('unit', entries.unit);
  params.append('r0', String(entries.r0));
  return params.toString();
}
