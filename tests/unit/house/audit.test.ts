import { expect, test } from 'vitest';
import { judge } from '../../../.config/audit.ts';

// Shape of npm's audit report, version 2: from memory of `npm audit --json`.
const report = (counts: Record<string, number>): string =>
  JSON.stringify({ auditReportVersion: 2, metadata: { vulnerabilities: counts } });

test('counts high and critical flaws apart from lesser ones', () => {
  const counts = { info: 1, low: 2, moderate: 3, high: 4, critical: 5, total: 15 };
  expect(judge(report(counts))).toEqual({ answered: true, severe: 9, others: 6 });
});

test('a clean report has been answered', () => {
  const counts = { info: 0, low: 0, moderate: 0, high: 0, critical: 0, total: 0 };
  expect(judge(report(counts))).toEqual({ answered: true, severe: 0, others: 0 });
});

test('a refusal, nothing, or no JSON is no answer, never a clean report', () => {
  for (const output of ['{"statusCode":405,"error":{"summary":""}}', '', 'npm error'])
    expect(judge(output)).toEqual({ answered: false });
});
