// Runs every check in order, goes on after a failure, and ends with one line of totals.
import { spawn } from 'node:child_process';
import { mkdtemp, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** Minutes after which what is still running is stopped and counted as failed. */
const DEADLINE_MINUTES = 36;

interface Counts {
  passed: number;
  failed: number;
  /** Shown beside the runner, not in the totals. */
  skipped?: number;
}

interface Runner {
  name: string;
  command: string[];
  /** Reads the counts of a runner that counts its tests; without it, the runner is one check. */
  counts?: (reports: string) => Promise<Counts>;
  /** Prints its output as it comes, not only when it fails: for what runs long. */
  live?: boolean;
  /** Only makes ready what a later runner needs: counted when it fails, not when it succeeds. */
  uncounted?: boolean;
}

async function report(reports: string, name: string): Promise<unknown> {
  return JSON.parse(await readFile(join(reports, name), 'utf8'));
}

async function vitestCounts(reports: string, name: string): Promise<Counts> {
  const {
    numPassedTests: passed,
    numFailedTests: failed,
    numPendingTests: skipped,
  } = (await report(reports, name)) as Record<
    'numPassedTests' | 'numFailedTests' | 'numPendingTests',
    number
  >;
  return { passed, failed, skipped };
}

async function playwrightCounts(reports: string): Promise<Counts> {
  const { stats } = (await report(reports, 'playwright.json')) as {
    stats: Record<'expected' | 'unexpected' | 'flaky' | 'skipped', number>;
  };
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky, skipped: stats.skipped };
}

const reports = await mkdtemp(join(tmpdir(), 'hobnote-tests-'));

const RUNNERS: Runner[] = [
  { name: 'types', command: ['npm', 'run', '-s', 'types'] },
  { name: 'lint', command: ['npm', 'run', '-s', 'lint'] },
  { name: 'format', command: ['npm', 'run', '-s', 'format'] },
  // The packages that are there are those the lockfile names, whole and no others.
  { name: 'packages', command: ['npm', 'ls', '--all', '--loglevel=error'] },
  { name: 'licences', command: ['npm', 'run', '-s', 'licences'] },
  // Not counted when it succeeds: where the registry answers no audits, nothing was checked.
  { name: 'audit', command: ['node', '.config/audit.ts'], live: true, uncounted: true },
  { name: 'proof', command: ['npm', 'run', '-s', 'prove'] },
  {
    name: 'unit and reference',
    command: [
      ...['vitest', 'run', '--config', '.config/vitest.config.ts'],
      ...['--reporter=dot', '--reporter=json', `--outputFile.json=${join(reports, 'vitest.json')}`],
    ],
    counts: (folder) => vitestCounts(folder, 'vitest.json'),
    live: true,
  },
  { name: 'build', command: ['npm', 'run', '-s', 'build'] },
  {
    name: 'Chromium',
    command: ['node', '.config/browser-install.ts'],
    live: true,
    uncounted: true,
  },
  { name: 'nginx', command: ['node', '.config/nginx-install.ts'], live: true, uncounted: true },
  {
    name: 'browser',
    command: [
      ...['playwright', 'test', '--config', '.config/playwright.config.ts'],
      '--reporter=dot,json',
    ],
    counts: playwrightCounts,
    live: true,
  },
  {
    name: 'Firefox and WebKit',
    command: ['node', '.config/engines-install.ts'],
    live: true,
    uncounted: true,
  },
  {
    name: 'engines',
    command: [
      ...['vitest', 'run', '--config', '.config/engines.config.ts', '--reporter=dot'],
      ...['--reporter=json', `--outputFile.json=${join(reports, 'engines.json')}`],
    ],
    counts: (folder) => vitestCounts(folder, 'engines.json'),
    live: true,
  },
];

const started = Date.now();
const millisecondsLeft = () => DEADLINE_MINUTES * 60_000 - (Date.now() - started);

/** Runs one command in a process group of its own, so that stopping it stops what it started. */
function run({ command: [program = '', ...args], live = false }: Runner): Promise<boolean> {
  return new Promise((done) => {
    const child = spawn(program, args, {
      detached: true,
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { ...process.env, PLAYWRIGHT_JSON_OUTPUT_FILE: join(reports, 'playwright.json') },
    });
    const kept: Buffer[] = [];
    for (const stream of [child.stdout, child.stderr])
      stream.on('data', (chunk: Buffer) => (live ? process.stdout.write(chunk) : kept.push(chunk)));
    const stop = (signal: NodeJS.Signals) => {
      try {
        if (child.pid !== undefined) process.kill(-child.pid, signal);
      } catch {
        // It has ended by itself meanwhile.
      }
    };
    const end = () => {
      stop('SIGTERM');
    };
    const timer = setTimeout(
      () => {
        console.log(`\nStopped: ${String(DEADLINE_MINUTES)} minutes are over.`);
        end();
        setTimeout(stop, 5_000, 'SIGKILL').unref();
      },
      Math.max(0, millisecondsLeft()),
    );
    const interrupted = () => {
      end();
      process.exit(130);
    };
    process.once('SIGINT', interrupted).once('SIGTERM', interrupted);
    const finish = (ok: boolean) => {
      clearTimeout(timer);
      process.off('SIGINT', interrupted).off('SIGTERM', interrupted);
      if (!ok) process.stdout.write(Buffer.concat(kept));
      done(ok);
    };
    child.once('error', (error) => {
      console.log(error.message);
      finish(false);
    });
    child.once('close', (code) => {
      finish(code === 0);
    });
  });
}

/** A runner that fails without a failed test (a file that does not load, say) is one failure. */
async function counted(runner: Runner, ok: boolean): Promise<Counts> {
  if (runner.counts === undefined)
    return { passed: ok && runner.uncounted !== true ? 1 : 0, failed: ok ? 0 : 1 };
  const counts = await runner.counts(reports).catch(() => ({ passed: 0, failed: 1 }));
  return { ...counts, failed: Math.max(counts.failed, ok ? 0 : 1) };
}

const table: string[] = [];
const totals: Counts = { passed: 0, failed: 0 };
for (const runner of RUNNERS) {
  console.log(`\n── ${runner.name}`);
  const from = Date.now();
  const { passed, failed, skipped = 0 } = await counted(runner, await run(runner));
  totals.passed += passed;
  totals.failed += failed;
  const seconds = Math.round((Date.now() - from) / 1000);
  const aside = skipped > 0 ? `, ${String(skipped)} skipped` : '';
  const line = `${String(passed)} passed, ${String(failed)} failed${aside} (${String(seconds)} s)`;
  console.log(line);
  if (runner.uncounted !== true) table.push(`${runner.name.padEnd(20)} ${line}`);
}
await rm(reports, { recursive: true });

console.log(`\n${table.join('\n')}\n`);
console.log(`${String(totals.passed)} passed, ${String(totals.failed)} failed`);
process.exitCode = totals.failed === 0 ? 0 : 1;
