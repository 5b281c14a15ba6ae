/**
 * `npm run mutants -- code [FILE …]`: slips in the code that proves, follows, waits, repairs and guards, by
 * Stryker, a package of this folder's own. What came of each file is written down for the safety case.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { z } from 'zod';
import { safety } from '../../src/content/load.ts';
import { hashOf, today, versionIn, write } from '../safety/results.ts';

/** What must not be wrong unseen. */
const GUARDS = [
  ...['src/proof/**/*.ts', 'src/journey/trace.ts', 'src/journey/wait.ts'],
  ...['src/note/repair.ts', 'src/content/hazards.ts'],
];

const explainedSchema = z.array(
  z.strictObject({
    file: z.string(),
    line: z.string(),
    now: z.string(),
    reason: z.string().min(20),
  }),
);

interface Mutant {
  readonly status: string;
  readonly mutatorName: string;
  readonly replacement?: string;
  readonly location: { readonly start: { readonly line: number } };
}
interface Report {
  readonly files: Readonly<
    Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>
  >;
}

const here = fileURLToPath(new URL('.', import.meta.url));
const top = fileURLToPath(new URL('../..', import.meta.url));
const shell = process.platform === 'win32';
const run = (command: string, args: readonly string[], cwd: string): number | null =>
  spawnSync(command, args, { cwd, stdio: ['ignore', 2, 2], shell }).status;

/** Slips in these files, or in all that guard; whether every slip was caught or is explained. */
export async function codeMutants(files: readonly string[]): Promise<boolean> {
  if (!existsSync(join(here, 'node_modules')) && run('npm', ['ci'], here) !== 0)
    throw new Error('Stryker was not installed: see the message of npm above.');
  const folder = mkdtempSync(join(tmpdir(), 'hobnote-stryker-'));
  const report = join(folder, 'report.json');
  const settings = {
    ...{ testRunner: 'vitest', plugins: ['@stryker-mutator/vitest-runner'], allowEmpty: false },
    vitest: { configFile: '.config/vitest.config.ts', related: true },
    mutate: files.length > 0 ? files : GUARDS,
    ignorePatterns: ['dist', 'dist.next', 'test-results', '.astro', 'tests/*/node_modules'],
    reporters: ['json', 'progress'],
    jsonReporter: { fileName: report },
    concurrency: Math.max(1, availableParallelism() - 1),
    ...{ tempDirName: join(folder, 'copies'), cleanTempDir: 'always', checkers: [] },
    // A slip in what runs once, as a file loads, would need all tests anew; the types hold most of it.
    ...{ coverageAnalysis: 'perTest', ignoreStatic: true, timeoutMS: 60_000 },
  };
  const config = join(folder, 'stryker.json');
  writeFileSync(config, JSON.stringify(settings));
  const stryker = join(here, 'node_modules/@stryker-mutator/core/bin/stryker.js');
  run(process.execPath, [stryker, 'run', config], top);
  if (!existsSync(report)) throw new Error('Stryker came to no end: see its message above.');
  const found = JSON.parse(readFileSync(report, 'utf8')) as Report;
  const explained = explainedSchema.parse(
    parse(readFileSync(join(here, 'explained.yaml'), 'utf8')),
  );

  const rows = Object.entries(found.files).map(([file, { source, mutants }]) => {
    const lines = source.split('\n');
    const count = (...of: readonly string[]): number =>
      mutants.filter(({ status }) => of.includes(status)).length;
    const alive = mutants.filter(({ status }) => status === 'Survived' || status === 'NoCoverage');
    const unexplained = alive.filter(({ replacement = '', location }) => {
      const line = (lines[location.start.line - 1] ?? '').trim();
      return !explained.some(
        (one) => one.file === file && one.line === line && one.now === replacement,
      );
    });
    for (const { mutatorName, replacement = '', location } of unexplained)
      console.log(
        `${file}:${String(location.start.line)} ${mutatorName}: ${replacement.replace(/\s+/g, ' ')}`,
      );
    const caught = count('Killed', 'Timeout', 'RuntimeError', 'CompileError');
    const ignored = alive.length - unexplained.length + count('Ignored');
    console.log(
      `${file}: ${String(caught)} caught, ${String(unexplained.length)} not, ${String(ignored)} set aside`,
    );
    return [
      file,
      { hash: hashOf(join(top, file)), caught, survived: unexplained.length, ignored },
    ] as const;
  });
  const before = safety().code?.files ?? {};
  await write({
    code: {
      ...today({ Stryker: versionIn(here, '@stryker-mutator/core') }),
      files: { ...before, ...Object.fromEntries(rows) },
    },
  });
  return rows.every(([, { survived }]) => survived === 0);
}
