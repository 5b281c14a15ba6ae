import { formatValues, parseValues } from '../../address/grammar.ts';
import type { Sensor } from '../../physics/rtd.ts';

/** What is typed on the sensor bench, and its place in the address's fragment. Pure. */
export type Unit = 'F' | 'C';

/** By the name each has in the address: those of one R0 are told apart by their slope. */
const named = {
  '1000': { r0: 1000, slope: 3851 },
  '1000-3750': { r0: 1000, slope: 3750 },
  '100': { r0: 100, slope: 3851 },
} as const satisfies Record<string, Sensor>;
export type SensorName = keyof typeof named;

/** In the order they are offered. */
export const sensors: readonly SensorName[] = ['1000', '1000-3750', '100'];

export function sensorOf(name: SensorName): Sensor {
  return named[name];
}

/** The fields hold what was typed, right or wrong. */
export interface Entries {
  readonly ohms: string;
  readonly at: string;
  readonly added: string;
  readonly unit: Unit;
  readonly r0: SensorName;
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
    r0: sensors.find((name) => name === given.r0) ?? '1000',
  };
}

/** The fragment as `#…`. */
export function formatEntries(entries: Entries): string {
  return formatValues({ ...entries }, KEYS);
}
