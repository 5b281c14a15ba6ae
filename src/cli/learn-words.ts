/** Words for the authors of figures: what is wrong with a file, and what learning found. */
import type { Change } from '../diagnosis/learn.ts';
import type { VisitsProblem } from '../diagnosis/read-visits.ts';
import { clearlyBetter } from '../diagnosis/score.ts';
import type { HeldOut } from '../diagnosis/score.ts';

export function tellVisitsProblem(file: string, problem: VisitsProblem): string {
  switch (problem.code) {
    case 'not-json':
      return `${file}: This is not JSON (${problem.reason}).\n    Export the visits again, or mend commas and quotes.`;
    case 'newer-file':
      return `${file}: This is version ${problem.version} of such files, made by a newer copy of the site.\n    Update this copy.`;
    case 'wrong-shape':
      return `${file}: ${problem.path || 'The file'} has the wrong form (${problem.issue}).\n    Compare with public/schema/visits.json.`;
    case 'unknown-fault':
      return `${file}: Visit ${problem.visit} names the fault "${problem.name}".\n    Use a name in content/model/faults.yaml, or "other".`;
    case 'unknown-part':
      return `${file}: Visit ${problem.visit} names the part "${problem.name}".\n    Use a name in content/model/parts.yaml, or take it out.`;
  }
}

const figure = (value: number): string => value.toFixed(4);
const signed = (value: number): string => `${value < 0 ? '−' : '+'}${figure(Math.abs(value))}`;

export function scoreLines({ before, after, gain, gainError, visits }: HeldOut): string[] {
  return [
    `Held out: each of ${visits} visits foretold by figures learned from other visits only.`,
    '                        log score (0 is perfect)   Brier score (0 is perfect)',
    `  figures as they are   ${signed(before.log).padEnd(24)}   ${figure(before.brier)}`,
    `  learned figures       ${signed(after.log).padEnd(24)}   ${figure(after.brier)}`,
    `  gain in log score by a visit: ${signed(gain)}, standard error ${figure(gainError)}`,
  ];
}

/** One line for each distribution that changes. */
export function changeLines(changes: readonly Change[]): string[] {
  return changes.map(({ paths, seen, before, after }) => {
    const [first = []] = paths;
    const priors = first[0] === 'faults';
    const name = priors ? 'priors' : first.slice(0, -1).join('.');
    const moves = after.flatMap((one, index) => {
      const old = before[index] ?? NaN;
      const label = priors ? `${paths[index]?.[1] ?? ''} ` : '';
      return one === old ? [] : [`${label}${old} → ${one}`];
    });
    return `  ${name} (${seen} visits): ${moves.join(', ')}`;
  });
}

/** What came of it, and what to do next. */
export function verdict(
  found: HeldOut | undefined,
  changes: readonly Change[],
  written: string | undefined,
): string {
  if (!found) return 'Too few visits to hold any out: collect more. Nothing written.';
  if (changes.length === 0)
    return 'No distribution has visits enough to move: collect more. Nothing written.';
  if (!clearlyBetter(found))
    return 'Learned figures do not foretell clearly better: keep the figures as they are. Nothing written.';
  if (written !== undefined) return `Written to ${written}. Read the change before you publish it.`;
  return 'Learned figures foretell clearly better. Nothing written: add --write to change the figures.';
}
