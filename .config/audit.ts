// node .config/audit.ts: fails on known flaws of high or critical weight in any package.
import { spawnSync } from 'node:child_process';

type Verdict = { answered: false } | { answered: true; severe: number; others: number };

/** Reads what `npm audit --json` printed. A registry that answers no audits gives no counts. */
export function judge(output: string): Verdict {
  let said: { metadata?: { vulnerabilities?: Record<string, number> } };
  try {
    said = JSON.parse(output) as typeof said;
  } catch {
    return { answered: false };
  }
  const found = said.metadata?.vulnerabilities;
  if (found === undefined) return { answered: false };
  const severe = (found['high'] ?? 0) + (found['critical'] ?? 0);
  return { answered: true, severe, others: (found['total'] ?? severe) - severe };
}

/** What `npm audit` of this lockfile does not look at. */
const UNCHECKED =
  'flaws of Node itself and of the browsers, and the packages of tests/bench/side-by-side, tests/eyes and tests/mutants';

if (import.meta.main) {
  const { stdout } = spawnSync('npm', ['audit', '--json'], { encoding: 'utf8', timeout: 60_000 });
  const verdict = judge(stdout);
  if (!verdict.answered) {
    console.log(
      'NOT CHECKED: known flaws of any package: the registry gave no answer. Run "npm audit" where it does.',
    );
    // A check that could not be made, as GNU Automake's tests say it.
    process.exitCode = 77;
  } else {
    console.log(
      `Packages with known flaws: ${String(verdict.severe)} of high or critical weight, ${String(verdict.others)} of less.`,
    );
    console.log(`Not checked: ${UNCHECKED}.`);
    if (verdict.severe > 0) console.log('Run "npm audit" for their names, then update them.');
    process.exitCode = verdict.severe === 0 ? 0 : 1;
  }
}
