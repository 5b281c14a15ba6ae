/**
 * `npm run mutants -- code [FILE …]`: slips in the code that proves, follows, waits, repairs and guards, by
 * Stryker, a package of this folder's own. A slip is caught by a test, or by the types. What came of each
 * file is written down for the safety case.
 */
import { spawnSync } from 'node:child_process';
import {
  cpSync,
  existsSync,
  globSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { parse } from 'yaml';
import { z } from 'zod';
import { hashOf, results, today, versionIn, write } from '../safety/results.ts';

const here = fileURLToPath(new URL('.', import.meta.url));
const top = fileURLToPath(new URL('../..', import.meta.url));

interface Guard {
  readonly files: readonly string[];
  /** Those that hold the files. */
  readonly tests: readonly string[];
  /** Titles of tests among them that take seconds and are left out: they could only catch more. */
  readonly sweeps?: string;
}

const WORDS = 'src/proof/asks-too-much.ts';
/** What must not be wrong unseen. */
const GUARDS: readonly Guard[] = [
  { files: [WORDS], tests: ['unit/proof/text'] },
  {
    files: globSync('src/proof/*.ts', { cwd: top }).filter((file) => file !== WORDS),
    tests: ['properties', 'ends', 'rules', 'text'].map((name) => `unit/proof/${name}`),
  },
  { files: ['src/journey/trace.ts'], tests: ['unit/journey/trace'], sweeps: 'of every guide' },
  { files: ['src/journey/wait.ts'], tests: ['unit/journey/wait', 'unit/journey/wait-length'] },
  {
    files: ['src/note/repair.ts'],
    tests: ['unit/note/repair'],
    sweeps: 'how often|any two wrong|cases at random',
  },
  { files: ['src/content/hazards.ts'], tests: ['unit/content/hazard-log'] },
  {
    files: ['src/content/gates.ts', 'src/content/regions.ts'],
    tests: ['unit/content/small-gates'],
  },
];

const explainedSchema = z.array(
  z.strictObject({
    file: z.string(),
    line: z.string(),
    now: z.string(),
    reason: z.string().min(20),
  }),
);

interface Place {
  readonly line: number;
  readonly column: number;
}
interface Mutant {
  readonly status: string;
  readonly mutatorName: string;
  readonly replacement?: string;
  readonly location: { readonly start: Place; readonly end: Place };
}
interface Report {
  readonly files: Readonly<
    Record<string, { readonly source: string; readonly mutants: readonly Mutant[] }>
  >;
}
type Files = Report['files'];

const shell = process.platform === 'win32';
const run = (command: string, args: readonly string[], cwd: string, env = {}): number | null =>
  spawnSync(command, args, {
    ...{ cwd, stdio: ['ignore', 2, 2], shell, env: { ...process.env, ...env } },
  }).status;

const isAlive = ({ status }: Mutant): boolean => status === 'Survived' || status === 'NoCoverage';

/** What Stryker says of these files. */
function tried(mutate: readonly string[], { tests, sweeps = '' }: Guard, folder: string): Files {
  const report = join(folder, 'report.json');
  const settings = {
    ...{ testRunner: 'in-node', plugins: [join(here, 'runner.ts')], allowEmpty: false },
    mutate,
    ignorePatterns: ['dist', 'dist.next', 'test-results', '.astro', 'tests/*/node_modules'],
    reporters: ['json', 'progress'],
    jsonReporter: { fileName: report },
    concurrency: Math.max(1, availableParallelism() - 1),
    ...{ tempDirName: join(folder, 'copies'), cleanTempDir: 'always', checkers: [] },
    ...{ coverageAnalysis: 'perTest', ignoreStatic: false, timeoutMS: 20_000 },
  };
  const config = join(folder, 'stryker.json');
  writeFileSync(config, JSON.stringify(settings));
  const stryker = join(here, 'node_modules/@stryker-mutator/core/bin/stryker.js');
  const include = tests.map((name) => `tests/${name}.test.ts`).join(' ');
  run(process.execPath, [stryker, 'run', config], top, { TESTS: include, SWEEPS: sweeps });
  if (!existsSync(report)) throw new Error('Stryker came to no end: see its message above.');
  return (JSON.parse(readFileSync(report, 'utf8')) as Report).files;
}

/** Those of the slips that no test catches which the types refuse: a copy of the file for each. */
function refusedByTypes(files: Files, folder: string): ReadonlySet<Mutant> {
  cpSync(join(top, 'src'), join(folder, 'src'), { recursive: true });
  symlinkSync(join(top, 'node_modules'), join(folder, 'node_modules'), 'junction');
  const copies = new Map<string, Mutant>();
  for (const [file, { source, mutants }] of Object.entries(files)) {
    const lines = source.split('\n');
    const offset = ({ line, column }: Place): number =>
      lines.slice(0, line - 1).join('\n').length + (line > 1 ? 1 : 0) + column - 1;
    for (const mutant of mutants.filter(isAlive)) {
      const { location, replacement = '' } = mutant;
      const name = file.replace(/\.ts$/, `.slip-${String(copies.size)}.ts`);
      const slipped =
        source.slice(0, offset(location.start)) + replacement + source.slice(offset(location.end));
      writeFileSync(join(folder, name), slipped);
      copies.set(name, mutant);
    }
  }
  const settings = {
    extends: join(top, 'tsconfig.json'),
    // What a slip leaves unused is no reason to refuse it.
    compilerOptions: {
      noUnusedLocals: false,
      noUnusedParameters: false,
      allowUnreachableCode: true,
    },
    include: ['src/**/*.slip-*.ts'],
  };
  writeFileSync(join(folder, 'tsconfig.json'), JSON.stringify(settings));
  const tsc = join(top, 'node_modules/typescript7/bin/tsc');
  const { stdout } = spawnSync(process.execPath, [tsc, '--noEmit', '--pretty', 'false'], {
    ...{ cwd: folder, encoding: 'utf8' },
  });
  const refused = [...stdout.matchAll(/^(\S+\.slip-\d+\.ts)\(/gm)].map((one) => one[1] ?? '');
  return new Set(refused.flatMap((name) => copies.get(name) ?? []));
}

/** Slips in these files, or in all that guard; whether every slip was caught or is explained. */
export async function codeMutants(files: readonly string[]): Promise<boolean> {
  const strange = files.filter((file) => !GUARDS.some((guard) => guard.files.includes(file)));
  if (strange.length > 0) throw new Error(`No tests are named for ${strange.join(', ')}.`);
  if (!existsSync(join(here, 'node_modules')) && run('npm', ['ci'], here) !== 0)
    throw new Error('Stryker was not installed: see the message of npm above.');
  const explained = explainedSchema.parse(
    parse(readFileSync(join(here, 'explained.yaml'), 'utf8')),
  );
  let whole = true;
  for (const guard of GUARDS) {
    const mutate = guard.files.filter((file) => files.length === 0 || files.includes(file));
    if (mutate.length === 0) continue;
    const folder = mkdtempSync(join(tmpdir(), 'hobnote-stryker-'));
    const found = tried(mutate, guard, folder);
    const refused = refusedByTypes(found, folder);
    rmSync(folder, { recursive: true });
    const rows = Object.entries(found).map(([file, { source, mutants }]) => {
      const lines = source.split('\n');
      const alive = mutants.filter((mutant) => isAlive(mutant) && !refused.has(mutant));
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
      const count = (...of: readonly string[]): number =>
        mutants.filter(({ status }) => of.includes(status)).length;
      const byTests = count('Killed', 'Timeout', 'RuntimeError', 'CompileError');
      const byTypes = mutants.filter((mutant) => refused.has(mutant)).length;
      const ignored = alive.length - unexplained.length + count('Ignored');
      console.log(
        `${file}: caught by tests ${String(byTests)} (out of time ${String(count('Timeout'))}), ` +
          `by types ${String(byTypes)}; not ${String(unexplained.length)}; set aside ${String(ignored)}`,
      );
      const caught = byTests + byTypes;
      const hash = hashOf(join(top, file));
      return [file, { hash, caught, survived: unexplained.length, ignored }] as const;
    });
    whole &&= rows.every(([, { survived }]) => survived === 0);
    const known = { ...results().code?.files, ...Object.fromEntries(rows) };
    const left = GUARDS.flatMap((one) => one.files).filter((file) => !Object.hasOwn(known, file));
    const about = today({ Stryker: versionIn(here, '@stryker-mutator/core') });
    await write({ code: { ...about, files: known, left } });
  }
  return whole;
}
