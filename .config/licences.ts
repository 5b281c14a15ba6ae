// npm run licences: lists the licence of every package, and fails on one that is not known here.
import { readFile } from 'node:fs/promises';

interface Locked {
  readonly version?: string;
  readonly license?: string;
}

/**
 * SPDX names that ask for nothing more than a notice. Tools only, never shipped: weak copyleft
 * (MPL, LGPL), and data and texts under Creative Commons.
 */
const PERMISSIVE = [
  'MIT',
  'ISC',
  '0BSD',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'Zlib',
];
const TOOLS = ['MPL-2.0', 'LGPL-3.0-or-later', 'CC0-1.0', 'CC-BY-4.0', 'Python-2.0', 'Unlicense'];

/** Whether an SPDX expression can be met: all parts of an AND, one of an OR. */
function met(expression: string, known: readonly string[]): boolean {
  return expression
    .replace(/[()]/g, '')
    .split(' OR ')
    .some((way) => way.split(' AND ').every((name) => known.includes(name.trim())));
}

/** The project's packages, and those that a benchmark and two runs install for themselves. */
const LOCKFILES = ['.', 'tests/bench/side-by-side', 'tests/eyes', 'tests/mutants'].map(
  (folder) => `${folder}/package-lock.json`,
);
const locked = await Promise.all(
  LOCKFILES.map(async (file) => {
    const lock = JSON.parse(await readFile(file, 'utf8')) as { packages: Record<string, Locked> };
    return Object.entries(lock.packages);
  }),
);
const packages = locked
  .flat()
  .filter(([path]) => path !== '')
  .map(([path, { version = '?', license = 'none given' }]) => ({
    name: `${path.replace(/^.*node_modules\//, '')} ${version}`,
    license,
  }));
const byLicence = Map.groupBy(packages, ({ license }) => license);
for (const [license, group] of [...byLicence].toSorted(([a], [b]) => a.localeCompare(b)))
  console.log(
    `${license} (${String(group.length)})\n  ${[...new Set(group.map(({ name }) => name))].toSorted().join('\n  ')}\n`,
  );
const unknown = packages.filter(({ license }) => !met(license, [...PERMISSIVE, ...TOOLS]));
for (const { name, license } of unknown)
  console.error(`${name}: "${license}" is not known here. Look at it, then add it to licences.ts.`);
console.log(`${String(packages.length)} packages, ${String(unknown.length)} with unknown licences`);
process.exitCode = packages.length > 0 && unknown.length === 0 ? 0 : 1;
