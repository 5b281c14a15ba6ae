/** Visits and figures from files, and figures back into their file. */
import { existsSync, readFileSync } from 'node:fs';
import { isScalar, parseDocument } from 'yaml';
import type { Change } from '../diagnosis/learn.ts';
import { loadFaults } from '../diagnosis/load.ts';
import { readVisits, unknownNames } from '../diagnosis/read-visits.ts';
import type { FaultsFile } from '../diagnosis/schema.ts';
import type { VisitsFile } from '../diagnosis/visits-schema.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { all } from '../content/content.ts';
import { content } from '../content/load.ts';
import { tellProblem } from '../content/tell.ts';
import type { Detail } from '../guide/details.ts';
import type { Guide } from '../guide/types.ts';
import { tellVisitsProblem } from './learn-words.ts';

/** Lines for people: what is wrong, and what to do. */
type ProblemLines = readonly string[];

function textOf(file: string): Result<string, ProblemLines> {
  return existsSync(file)
    ? ok(readFileSync(file, 'utf8'))
    : fail([`${file}: There is no such file to read.\n    Correct the name.`]);
}

/** A file of visits; names are not looked at yet. */
export function visitsOf(file: string): Result<VisitsFile, ProblemLines> {
  const source = textOf(file);
  if (!source.ok) return source;
  const visits = readVisits(source.value);
  return visits.ok ? visits : fail(visits.error.map((one) => tellVisitsProblem(file, one)));
}

/** Names in visits that the figures do not declare, told. */
export function strangers(file: string, visits: VisitsFile, faults: FaultsFile): ProblemLines {
  return unknownNames(visits, faults).map((one) => tellVisitsProblem(file, one));
}

export interface FaultFigures {
  readonly source: string;
  readonly faults: FaultsFile;
}

/** The figures of a guide, checked against its questions; `shown` is the file's name in problems. */
export function figuresOf(
  file: string,
  shown: string,
  name: string,
): Result<FaultFigures, ProblemLines> {
  const source = textOf(file);
  if (!source.ok) return source;
  const working = all<[readonly Guide[], readonly Detail[]]>(
    content().guides(),
    content().details(),
  );
  if (!working.ok) return fail(working.error.map(tellProblem));
  const [guides, details] = working.value;
  const guide = guides.find(({ id }) => String(id) === name);
  if (!guide)
    return fail([`There is no guide "${name}".\n    Use the visits of a guide there is.`]);
  const faults = loadFaults(source.value, shown, { guide, details });
  if (!faults.ok)
    return fail(
      faults.error.map(({ file: of, place, ...trouble }) =>
        tellProblem({ file: of, place, about: 'model', trouble }),
      ),
    );
  return ok({ source: source.value, faults: faults.value });
}

/** The text of `faults.yaml` with the changes made; all else stays to the letter. */
export function rewritten(source: string, changes: readonly Change[]): string {
  const document = parseDocument(source);
  const figures = changes.flatMap(({ paths, after }) =>
    paths.map((path, index) => {
      const node = document.getIn(path, true);
      if (!isScalar(node) || !node.range) throw new Error(`no figure at ${path.join('.')}`);
      const [start, end] = node.range;
      return { start, end, text: String(after[index]) };
    }),
  );
  // From the last to the first, so that the places before stay where they are.
  return figures
    .toSorted((a, b) => b.start - a.start)
    .reduce(
      (text, { start, end, text: figure }) => text.slice(0, start) + figure + text.slice(end),
      source,
    );
}
