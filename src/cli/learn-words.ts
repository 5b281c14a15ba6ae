/** Words for the authors of figures: what is wrong with a file, and what learning found. */
import type { Names } from '../content/model-names.ts';
import { TOLD, movesOf } from '../diagnosis/learn.ts';
import type { Change } from '../diagnosis/learn.ts';
import type { VisitsProblem } from '../diagnosis/read-visits.ts';
import type { ReliabilityBand } from '../diagnosis/reliability.ts';
import type { HeldOut, Score, Study } from '../diagnosis/score.ts';

export function tellVisitsProblem(file: string, problem: VisitsProblem): string {
  switch (problem.code) {
    case 'not-json':
      return `${file}: This is not JSON (${problem.reason}).\n    Export the visits again, or mend commas and quotes.`;
    case 'newer-file':
      return `${file}: This is version ${problem.version} of such files, made by a newer copy of the site.\n    Update this copy.`;
    case 'wrong-shape':
      return `${file}: ${problem.path || 'The file'} has the wrong form (${problem.issue}).\n    Compare with public/schema/visits.json.`;
    case 'unknown-fault':
      return `${file}: Visit ${problem.visit} names the fault "${problem.name}".\n    Use a name in content/model/faults.yaml, "other" or "nothing-found".`;
    case 'unknown-part':
      return `${file}: Visit ${problem.visit} names the part "${problem.name}".\n    Use a name in content/model/parts.yaml, or take it out.`;
  }
}

const figure = (value: number): string => value.toFixed(4);
const signed = (value: number): string => `${value < 0 ? '−' : '+'}${figure(Math.abs(value))}`;
const percent = (value: number, digits = 0): string => `${(100 * value).toFixed(digits)} %`;
/** Figures of the files have four decimals. */
const exactly = (value: number): string => `${String(Number((100 * value).toFixed(2)))} %`;

function scoreRow(name: string, { log, brier }: Score): string {
  return `  ${name.padEnd(24)}${signed(log).padEnd(29)}${figure(brier)}`;
}

function bandLine({ from, to, visits, claimed, right, interval }: ReliabilityBand): string {
  const { low, high } = interval;
  const said = `  said ${percent(from)} to ${percent(to)} (${percent(claimed, 1)} on average):`;
  return `${said} right in ${right} of ${visits}, ${percent(right / visits)} (${percent(low)} to ${percent(high)})`;
}

/** How well old and learned figures foretell visits they have not seen. */
export function scoreLines({ before, after, quarters, ...rest }: HeldOut): string[] {
  return [
    `How well the figures foretell. Each of the ${rest.visits} visits was told by figures learned from other visits only.`,
    `  ${''.padEnd(24)}log score (0 is perfect)     Brier score (0 is perfect)`,
    scoreRow('figures as they are', before.score),
    scoreRow('learned figures', after.score),
    `  learning gains ${signed(rest.gain)} in log score a visit, give or take ${figure(2 * rest.gainError)}`,
    'How far to trust a share. Learned figures: what they said of the first guess, and how often it was right (95 % interval):',
    ...after.reliability.map(bandLine),
    'Whether it drifts. Four equal parts of the visits in the order they were saved, learned figures:',
    ...quarters.map(({ visits, after: now }, index) =>
      scoreRow(`part ${index + 1}, ${visits} visits`, now),
    ),
  ];
}

function moves(change: Change, label: (place: number) => string): string[] {
  const { told, small } = movesOf(change);
  return [
    ...told.map(({ place, old, now }) => `${label(place)}: ${exactly(old)} → ${exactly(now)}`),
    ...(small > 0 ? [`and ${small} by less than ${percent(TOLD)} of itself`] : []),
  ];
}

/** What changes, in words, and where it stands in the files. */
function changeLine(change: Change, names: Names): string[] {
  const { subject, seen } = change;
  if (subject.kind === 'faults') {
    const lines = moves(change, (place) => names.fault(subject.faults[place] ?? ''));
    return [
      `How often each fault is behind a call (${seen} visits; faults.yaml, prior):`,
      ...lines.map((line) => `  ${line}`),
    ];
  }
  const { key, answers, faults, given = {} } = subject;
  const conditions = Object.entries(given).map(
    ([other, list]) =>
      `after “${names.question(other)}” ${list.map((one) => `“${names.answer(other, one)}”`).join(' or ')}, `,
  );
  const of = faults ? faults.map((fault) => names.fault(fault)).join(' / ') : 'all other faults';
  return [
    `What callers answer to “${names.question(key)}” (${key}): ${conditions.join('')}${of}, ${seen} visits:`,
    ...moves(change, (place) => `“${names.answer(key, answers[place] ?? '')}”`).map(
      (line) => `  ${line}`,
    ),
  ];
}

export function changeLines(changes: readonly Change[], names: Names): string[] {
  return changes.flatMap((one) => changeLine(one, names).map((line) => `  ${line}`));
}

/** What came of it, and what to do next. */
export function verdict(
  { heldOut: found, changes, better }: Study,
  written: string | undefined,
): string {
  if (!found) return 'Too few visits to hold any out: collect more. Nothing written.';
  if (changes.length === 0)
    return 'No question has visits enough to change its figures: collect more. Nothing written.';
  if (!better)
    return 'Learned figures do not foretell clearly better: keep the figures as they are. Nothing written.';
  if (written !== undefined) return `Written to ${written}. Read the change before you publish it.`;
  return 'Learned figures foretell clearly better. Nothing written: add --write to change the figures.';
}
