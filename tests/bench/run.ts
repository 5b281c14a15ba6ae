// npm run bench [-- NAME …]: measures, and prints every figure beside its ceiling or floor.
import { availableParallelism, loadavg } from 'node:os';
import type { Bench, Row } from './row.ts';

const NAMES = [
  ...[
    'note',
    'fuzz',
    'prove',
    'diagnosis',
    'load',
    'route',
    'pages',
    'sight',
    'hosting',
    'offline',
    'build',
    'growth',
    'guides',
  ],
  ...['side-by-side'],
];

/** The benchmarks there are; each file exports one function whose name starts with `bench`. */
async function load(name: string): Promise<Bench> {
  const url = new URL(`./${name}.ts`, import.meta.url);
  const module = (await import(url.href)) as Record<string, unknown>;
  const bench = Object.entries(module).find(([key]) => key.startsWith('bench'))?.[1];
  if (typeof bench !== 'function') throw new Error(`${name}.ts exports no bench function`);
  return bench as Bench;
}

const figure = (value: number): string =>
  value.toLocaleString('en-US', { maximumFractionDigits: Math.abs(value) < 10 ? 3 : 0 });

function met({ value, ceiling, floor }: Row): boolean | undefined {
  if (ceiling === undefined && floor === undefined) return undefined;
  return value <= (ceiling ?? Infinity) && value >= (floor ?? -Infinity);
}

function bound({ ceiling, floor }: Row): string {
  return [
    ...(floor === undefined ? [] : [`≥ ${figure(floor)}`]),
    ...(ceiling === undefined ? [] : [`≤ ${figure(ceiling)}`]),
  ].join(', ');
}

function mark(row: Row): string {
  const ok = met(row);
  if (ok === undefined) return ' ';
  return ok ? '✓' : '✗';
}

function print(rows: readonly Row[]): void {
  const cells = rows.map((row) => [
    row.name,
    figure(row.value),
    row.unit,
    bound(row),
    mark(row),
    row.note ?? '',
  ]);
  const widths = [0, 1, 2, 3].map((column) =>
    Math.max(...cells.map((row) => row[column]?.length ?? 0)),
  );
  for (const [name = '', value = '', unit = '', limit = '', sign = '', note = ''] of cells)
    console.log(
      [
        sign,
        name.padEnd(widths[0] ?? 0),
        value.padStart(widths[1] ?? 0),
        unit.padEnd(widths[2] ?? 0),
        limit.padEnd(widths[3] ?? 0),
        note,
      ]
        .join('  ')
        .trimEnd(),
    );
}

/** Not among all: it takes an hour, and programs that no test needs. */
const ONLY_ASKED = ['voice'];

const asked = process.argv.slice(2);
const known = [...NAMES, ...ONLY_ASKED];
const unknown = asked.filter((name) => !known.includes(name));
if (unknown.length > 0) {
  console.error(`No benchmark ${unknown.join(', ')}. There are: ${known.join(', ')}.`);
  process.exit(2);
}

const rows: Row[] = [];
const broken: string[] = [];
for (const name of asked.length > 0 ? asked : NAMES) {
  console.error(`measuring ${name} …`);
  const from = performance.now();
  try {
    rows.push(...(await (await load(name))()));
    console.error(`  ${figure((performance.now() - from) / 1000)} s`);
  } catch (error) {
    // What the others measured is not lost.
    console.error(error);
    broken.push(name);
  }
}
print(rows);
// Other work on the machine slows what is timed: a busy machine makes the timings worthless.
const [busy = 0] = loadavg();
console.log(`\nmachine load ${figure(busy)} on ${String(availableParallelism())} processors`);
const missed = rows.filter((row) => met(row) === false).length;
console.log(`${String(rows.length)} figures, ${String(missed)} outside their bound`);
if (broken.length > 0) console.log(`not measured, see above: ${broken.join(', ')}`);
process.exitCode = missed === 0 && broken.length === 0 ? 0 : 1;
