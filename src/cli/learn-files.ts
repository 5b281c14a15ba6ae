/** Visits and figures from files, and figures back into their files. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { loadFigures } from '../diagnosis/load.ts';
import { readVisits, unknownNames } from '../diagnosis/read-visits.ts';
import type { ModelFile } from '../diagnosis/schema.ts';
import type { VisitsFile } from '../diagnosis/visits-schema.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { all } from '../content/content.ts';
import { content } from '../content/load.ts';
import { tellProblem } from '../content/tell.ts';
import type { Detail } from '../guide/details.ts';
import type { Guide } from '../guide/types.ts';
import type { SourceFile } from '../guide/yaml.ts';
import { tellVisitsProblem } from './learn-words.ts';

/** Lines for people: what is wrong, and what to do. */
type ProblemLines = readonly string[];

/** A file of visits; names are not looked at yet. */
export function visitsOf(file: string): Result<VisitsFile, ProblemLines> {
  if (!existsSync(file))
    return fail([`${file}: There is no such file to read.\n    Correct the name.`]);
  const visits = readVisits(readFileSync(file, 'utf8'));
  return visits.ok ? visits : fail(visits.error.map((one) => tellVisitsProblem(file, one)));
}

/** Names in visits that the figures do not declare, told. */
export function strangers(file: string, visits: VisitsFile, figures: ModelFile): ProblemLines {
  return unknownNames(visits, figures).map((one) => tellVisitsProblem(file, one));
}

export interface Figures {
  readonly files: readonly SourceFile[];
  readonly model: ModelFile;
  /** As the firm's callers walk them. */
  readonly guides: readonly Guide[];
}

/** The figures in a folder, checked against the guides' questions. */
export function figuresOf(folder: string): Result<Figures, ProblemLines> {
  const names = existsSync(folder) ? readdirSync(folder).toSorted() : [];
  const files = names
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => join(folder, name))
    .map((file) => ({ file, source: readFileSync(file, 'utf8') }));
  if (files.length === 0)
    return fail([`${folder}: There are no figures to read.\n    Correct the name.`]);
  const working = all<[readonly Guide[], readonly Guide[], readonly Detail[]]>(
    content().guides(),
    content().wholeGuides(),
    content().details(),
  );
  if (!working.ok) return fail(working.error.map(tellProblem));
  const [guides, whole, details] = working.value;
  const model = loadFigures(files, { guides: whole, details });
  if (!model.ok)
    return fail(
      model.error.map(({ file: of, place, ...trouble }) =>
        tellProblem({ file: of, place, about: 'model', trouble }),
      ),
    );
  return ok({ files, model: model.value, guides });
}
