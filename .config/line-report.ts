// A reporter for both vitest and Playwright: one line for a test begun and one for a try ended,
// written at once, so that what a stage had done is known however it ends.
import { appendFileSync } from 'node:fs';
import type * as playwright from '@playwright/test/reporter';
import type * as vitest from 'vitest/node';

/** The environment variable that names the file the lines are added to. */
export const REPORT_FILE = 'TEST_REPORT_FILE';

export type Outcome = 'passed' | 'failed' | 'skipped';

interface Begun {
  readonly id: string;
  readonly name: string;
}
interface Ended extends Begun {
  readonly outcome: Outcome;
  /** Tries before this one. */
  readonly retries: number;
  /** Why it was skipped. */
  readonly why?: string | undefined;
}

/** What the lines of a report come to. */
export interface Tally {
  readonly counts: Record<Outcome, number>;
  /** Tries beyond the first, of all tests. */
  readonly retries: number;
  /** Names of tests that began and did not end. */
  readonly running: readonly string[];
  /** Reason → how many tests were skipped for it. */
  readonly skips: ReadonlyMap<string, number>;
}

function parsed(line: string): Begun | Ended | undefined {
  try {
    return JSON.parse(line) as Begun | Ended;
  } catch {
    // The last line of a stage that was killed may be cut.
    return undefined;
  }
}

/** One check as a tally; of nothing, none. */
export function counted(outcome?: Outcome): Tally {
  const counts = { passed: 0, failed: 0, skipped: 0 };
  if (outcome) counts[outcome] += 1;
  return { counts, retries: 0, running: [], skips: new Map() };
}

/** Reads a report, whole or cut off anywhere. Of a test tried again the last try counts. */
export function tally(report: string): Tally {
  const last = new Map<string, Begun | Ended>();
  for (const line of report.split('\n').map(parsed))
    // vitest may tell late that a test began: what has ended stays so.
    if (line && ('outcome' in line || !last.has(line.id))) last.set(line.id, line);
  const { counts } = counted();
  const running: string[] = [];
  const skips = new Map<string, number>();
  let retries = 0;
  for (const test of last.values()) {
    if (!('outcome' in test)) {
      running.push(test.name);
      continue;
    }
    counts[test.outcome] += 1;
    retries += test.retries;
    const { why = 'no reason given' } = test;
    if (test.outcome === 'skipped') skips.set(why, (skips.get(why) ?? 0) + 1);
  }
  return { counts, retries, running, skips };
}

function add(line: Begun | Ended): void {
  const file = process.env[REPORT_FILE];
  if (file !== undefined) appendFileSync(file, `${JSON.stringify(line)}\n`);
}

export default class LineReport implements vitest.Reporter, playwright.Reporter {
  /** @internal vitest */
  onTestCaseReady({ id, fullName: name }: vitest.TestCase): void {
    add({ id, name });
  }

  /** @internal vitest */
  onTestCaseResult(test: vitest.TestCase): void {
    const { id, fullName: name } = test;
    const { state: outcome, ...result } = test.result();
    if (outcome === 'pending') return;
    const why = 'note' in result ? result.note : undefined;
    add({ id, name, outcome, retries: test.diagnostic()?.retryCount ?? 0, why });
  }

  /** @internal Playwright */
  onTestBegin(test: playwright.TestCase): void {
    add({ id: test.id, name: test.titlePath().slice(1).join(' › ') });
  }

  /** @internal Playwright; called after each try */
  onTestEnd(test: playwright.TestCase, { status, retry: retries }: playwright.TestResult): void {
    if (status === 'interrupted') return;
    const outcomes = { expected: 'passed', flaky: 'passed', unexpected: 'failed' } as const;
    const outcome = test.outcome();
    add({
      ...{ id: test.id, name: test.titlePath().slice(1).join(' › '), retries },
      outcome: outcome === 'skipped' ? 'skipped' : outcomes[outcome],
      why: test.annotations.find(({ type }) => type === 'skip')?.description,
    });
  }

  /** @internal Playwright: the lines are no use to a person, who gets another report beside. */
  printsToStdio(): boolean {
    return false;
  }
}
