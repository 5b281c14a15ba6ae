// Runs every check, or the stages named, side by side where they do not disturb each other; goes on
// after a failure, and ends with one line of totals. No clock stops it: a slow machine takes longer.
import { spawn, spawnSync, type ChildProcess } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { availableParallelism, tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { missing, PROGRAMS, version, type Program } from './browsers.ts';
import { counted, REPORT_FILE, tally, type Tally } from './line-report.ts';

interface Stage {
  readonly command: string;
  /** Its tests are counted by their lines in a report; any other stage is one check. */
  readonly counts?: true;
  /** Only makes something ready: counted when it fails alone, and its output shown always. */
  readonly prepares?: true;
  /** It reads the built site. */
  readonly site?: true;
  /** What it drives on the built site. Without it: skipped by name, failed where CI is set. */
  readonly drives?: Program;
}

const cores = availableParallelism();
const vitest = (config: string) =>
  `vitest run --config .config/${config}.config.ts --reporter=minimal --reporter=./.config/line-report.ts`;
const playwright = `playwright test --config .config/playwright.config.ts --workers=${Math.min(cores, 4)}`;
// `npm run check` trusts what it found of files that are as they were; `npm test` asks anew.
const quick = process.argv.includes('--quick');
const cache = quick ? ' -- --cache --cache-strategy content' : '';
/** The commit that the last whole check found nothing wrong with. */
const GREEN = 'node_modules/.cache/check-green';
const git = (...args: string[]) => spawnSync('git', args, { encoding: 'utf8' });
/** What a check looks for changes since; without a record the last commit, which CI has tested. */
const green = (quick ? [existsSync(GREEN) ? readFileSync(GREEN, 'utf8') : '', 'HEAD'] : []).find(
  (commit) => git('cat-file', '-e', commit).status === 0,
);
const related = green === undefined ? '' : ` --changed=${green} --passWithNoTests`;

/** Stages of one phase run side by side, the long ones first; a phase waits for the one before. */
const PHASES: readonly Readonly<Record<string, Stage>>[] = [
  {
    unit: { command: vitest('vitest') + related, counts: true },
    programs: { command: 'node .config/get-browsers.ts', prepares: true },
    build: { command: 'npm run -s build' },
    lint: { command: `npm run -s lint${cache}` },
    types: { command: 'npm run -s types' },
    format: { command: 'npm run -s format' },
    proof: { command: 'npm run -s prove' },
    // The packages that are there are those the lockfile names, whole and no others.
    packages: { command: 'npm ls --all --loglevel=error' },
    licences: { command: 'npm run -s licences' },
    audit: { command: 'node .config/audit.ts' },
  },
  {
    browser: {
      command: `${playwright} --reporter=dot,./.config/line-report.ts`,
      ...{ counts: true, drives: 'Chromium' },
    },
    webkit: { command: `${vitest('engines')} webkit`, counts: true, drives: 'WebKit' },
    firefox: { command: `${vitest('engines')} firefox`, counts: true, drives: 'Firefox' },
    built: { command: vitest('built'), counts: true, site: true },
  },
];
const all = PHASES.flatMap((phase) => Object.entries(phase));

const asked = process.argv.slice(2).filter((word) => !word.startsWith('--'));
const unknown = asked.filter((name) => !all.some(([known]) => known === name));
if (unknown.length > 0) {
  const known = all.map(([name]) => name).join(' ');
  console.log(`There is no stage "${unknown.join('", "')}". The stages: ${known}`);
  process.exit(2);
}
if (all.some(([name, { site, drives }]) => (site ?? drives) && asked.includes(name)))
  asked.push('programs', 'build');
const runs = (name: string) => asked.length === 0 || asked.includes(name);

interface Result extends Tally {
  readonly seconds: number;
  /** Whether it was begun. */
  readonly ran: boolean;
  /** What there is to say of it besides its counts. */
  readonly why?: string;
}

/** Exit status of a check that could not be made; its last line says why (as GNU Automake has it). */
const SKIPPED = 77;
const reports = mkdtempSync(join(tmpdir(), 'hobnote-tests-'));
const results = new Map<string, Result>();
const children = new Set<ChildProcess>();
const interruption = new AbortController();

/** Runs the command in a process group of its own, so that stopping it stops what it started. */
function spawned(command: string, report: string, live: boolean) {
  return new Promise<{ status: number | string; output: string }>((done) => {
    // Many tests start a command of ours: what Node made of its files once serves the next.
    const kept = { NODE_COMPILE_CACHE: resolve('node_modules/.cache/node') };
    const env = { ...kept, ...process.env, [REPORT_FILE]: report };
    const child = spawn(command, { shell: true, detached: true, stdio: 'pipe', env });
    children.add(child);
    let output = '';
    for (const stream of [child.stdout, child.stderr])
      stream.setEncoding('utf8').on('data', (text: string) => {
        if (live) process.stdout.write(text);
        else output += text;
      });
    child.once('close', (code, signal) => {
      children.delete(child);
      done({ status: code ?? signal ?? 'no status', output: output.trimEnd() });
    });
  });
}

/** Why a stage on the built site cannot run; nothing where it can. */
function obstacle({ site, drives }: Stage): Result | undefined {
  if (!site && !drives) return undefined;
  const not = (outcome: 'failed' | 'skipped', why: string) => ({
    ...counted(outcome),
    ...{ seconds: 0, ran: false, why },
  });
  if (results.get('build')?.counts.failed !== 0) return not('skipped', 'the build failed');
  if (!drives || missing(drives).length === 0) return undefined;
  return not(process.env['CI'] ? 'failed' : 'skipped', `not found; ${PROGRAMS[drives].add}`);
}

async function run(name: string, stage: Stage, live: boolean): Promise<Result> {
  const barred = obstacle(stage);
  if (barred) return barred;
  console.log(`▸ ${name}`);
  const from = Date.now();
  const report = join(reports, name);
  writeFileSync(report, '');
  const { status, output } = await spawned(stage.command, report, live);
  const seconds = Math.round((Date.now() - from) / 1000);
  if (status === SKIPPED)
    return { ...counted('skipped'), seconds, ran: false, why: output.split('\n').at(-1) ?? '' };
  if (output !== '' && (status !== 0 || stage.prepares)) console.log(`── ${name}\n${output}`);
  const fine = counted(stage.prepares ? undefined : 'passed');
  const told = stage.counts ? tally(readFileSync(report, 'utf8')) : fine;
  const { passed, failed } = told.counts;
  const ok = status === 0 && (!stage.counts || green !== undefined || passed + failed > 0);
  if (ok && failed === 0) return { ...told, seconds, ran: true };
  // One that fails without a failed test (a file that does not load, a crash) is one failure.
  const counts = stage.counts
    ? { ...told.counts, failed: Math.max(failed, 1) }
    : counted('failed').counts;
  const [first, ...more] = told.running;
  const where =
    first === undefined ? '' : ` in "${first}"${more.length > 0 ? ` and ${more.length} more` : ''}`;
  return { ...told, counts, seconds, ran: true, why: `ended with ${status}${where}` };
}

function line({ counts, retries, seconds, ran, why }: Result): string {
  if (!ran) return `${counts.failed > 0 ? 'failed' : 'skipped'}: ${why ?? ''}`;
  const { passed, failed, skipped } = counts;
  const beside = [
    ...(skipped > 0 ? [`${skipped} skipped`] : []),
    ...(retries > 0 ? [`${retries} tried again`] : []),
  ];
  const told = why === undefined ? '' : `: ${why}`;
  return `${[`${passed} passed, ${failed} failed`, ...beside].join(', ')} (${seconds} s)${told}`;
}

function stop(signal: NodeJS.Signals): void {
  for (const { pid } of children)
    try {
      if (pid !== undefined) process.kill(-pid, signal);
    } catch {
      // It has ended by itself meanwhile.
    }
}
for (const signal of ['SIGINT', 'SIGTERM'] as const)
  process.once(signal, () => {
    interruption.abort();
    stop('SIGTERM');
    setTimeout(stop, 5_000, 'SIGKILL').unref();
  });

for (const phase of PHASES) {
  const queue = Object.entries(phase).filter(([name]) => runs(name));
  const live = queue.length === 1;
  const work = async () => {
    for (let next = queue.shift(); next && !interruption.signal.aborted; next = queue.shift()) {
      const [name, stage] = next;
      const result = await run(name, stage, live);
      results.set(name, result);
      const sign = result.ran ? '✓' : '-';
      console.log(`${result.counts.failed > 0 ? '✗' : sign} ${name}: ${line(result)}`);
    }
  };
  await Promise.all(Array.from({ length: cores }, work));
}
rmSync(reports, { recursive: true });

console.log('');
const ran: string[] = [];
const not: string[] = [];
for (const [name, { prepares, drives }] of all.filter(([one]) => runs(one))) {
  const result = results.get(name);
  if (prepares && result?.counts.failed === 0) continue;
  console.log(`${name.padEnd(9)} ${result ? line(result) : 'not run'}`);
  for (const [why, tests] of result?.skips ?? [])
    console.log(`${' '.repeat(10)}${tests} skipped: ${why}`);
  if (drives && result?.ran) ran.push(version(drives));
  else if (drives) not.push(`${drives} (${result?.why ?? 'not run'})`);
}
if (asked.length > 0) console.log(`\nOnly these, of ${all.length} stages.`);
if (ran.length + not.length > 0) {
  const none = ran.length === 0 ? 'NOT TESTED in any browser' : `Tested in ${ran.join(', ')}`;
  console.log(`\n${none}${not.length > 0 ? `; not in ${not.join('; not in ')}` : ''}.`);
}
if (interruption.signal.aborted) console.log('\nInterrupted: what was not run is not counted.');
const sum = (outcome: 'passed' | 'failed') =>
  [...results.values()].reduce((total, { counts }) => total + counts[outcome], 0);
const failed = Math.max(sum('failed'), interruption.signal.aborted ? 1 : 0);
console.log(`\n${sum('passed')} passed, ${failed} failed`);
process.exitCode = failed === 0 ? 0 : 1;
if (quick && failed === 0) {
  const head = git('rev-parse', 'HEAD');
  if (head.status === 0) writeFileSync(GREEN, head.stdout.trim());
}
