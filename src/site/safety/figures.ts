/** What runs found, as the safety page tells it. */
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { content } from '../../content/load.ts';
import type { Safety } from '../../content/schema/safety.ts';

export const number = (value: number | bigint): string => value.toLocaleString('en-US');

const day = new Intl.DateTimeFormat('en-US', { dateStyle: 'long', timeZone: 'UTC' });
/** When a run ended. */
export const dated = ({ on }: { readonly on: string }): string => day.format(new Date(on));

/** A share in percent, never rounded up to all. */
const percent = (part: number, whole: number): string =>
  `${String(Math.floor((1000 * part) / Math.max(whole, 1)) / 10)} %`;

const sum = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0);

/** How many unsafe copies of guides the proof failed. */
export function slipScore({ guides, ...run }: NonNullable<Safety['slips']>) {
  const all = Object.values(guides);
  const [unsafe, caught] = [sum(all.map((one) => one.unsafe)), sum(all.map((one) => one.caught))];
  return {
    ...{ unsafe, caught, all: caught === unsafe },
    told: `${number(caught)} of ${number(unsafe)} unsafe copies caught, ${dated(run)}`,
  };
}

/** The least share that the issue of tests asks for. */
const ENOUGH = 0.95;

/** How many slips in the project's own code its tests caught; the others are explained, each by itself. */
export function codeScore({ files, left, ...run }: NonNullable<Safety['code']>) {
  const all = Object.values(files);
  const [caught, survived, ignored] = (['caught', 'survived', 'ignored'] as const).map((one) =>
    sum(all.map((file) => file[one])),
  ) as [number, number, number];
  const made = caught + survived + ignored;
  return {
    all: left.length + survived === 0 && caught / Math.max(made, 1) >= ENOUGH,
    told: `${number(caught)} of ${number(made)} slips in ${number(all.length)} files caught (${percent(caught, made)}), ${number(ignored)} explained, ${dated(run)}`,
  };
}

/** The first 12 hex digits of a file's SHA-256, by its path from the project's top; none where it is gone. */
export function hashOf(path: string): string | undefined {
  try {
    const file = readFileSync(join(content().root, '..', path));
    return createHash('sha256').update(file).digest('hex').slice(0, 12);
  } catch {
    return undefined;
  }
}
