/** Visits and figures from files, and figures back into their files. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import { isScalar, parseDocument } from 'yaml';
import { detailKey } from '../diagnosis/evidence.ts';
import type { Change } from '../diagnosis/learn.ts';
import { loadFigures } from '../diagnosis/load.ts';
import { readVisits, unknownNames } from '../diagnosis/read-visits.ts';
import type { ModelFile } from '../diagnosis/schema.ts';
import type { VisitsFile } from '../diagnosis/visits-schema.ts';
import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { all } from '../content/content.ts';
import { content, textFile } from '../content/load.ts';
import { BLOCKS, MODEL, SOURCE } from '../content/texts.ts';
import { tellProblem } from '../content/tell.ts';
import type { Detail } from '../guide/details.ts';
import { isRecord } from '../guide/shape.ts';
import type { Guide } from '../guide/types.ts';
import type { SourceFile } from '../guide/yaml.ts';
import { tellVisitsProblem } from './learn-words.ts';
import type { Names } from './learn-words.ts';

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

/** The sentence at a path of nested texts, if there is one. */
function sentence(texts: unknown, ...path: readonly string[]): string | undefined {
  const found = path.reduce<unknown>(
    (inside, key) => (isRecord(inside) ? inside[key] : undefined),
    texts,
  );
  return typeof found === 'string' ? found : undefined;
}

/** What the English site calls faults, questions and answers; ids where it has no words. */
export function namesOf(guides: readonly Guide[]): Names {
  const read = (file: string) => textFile(SOURCE, file);
  const [model, preview, blocks] = [read(MODEL), read('preview'), read(BLOCKS)];
  const own = new Map(guides.map(({ id }) => [id as string, read(id)]));
  /** The texts of a table's page or detail. */
  const about = (key: string): unknown => {
    const [guide = '', page] = key.split('/');
    if (page !== undefined) return own.get(guide)?.[page];
    if (key.startsWith(detailKey('')))
      return isRecord(preview['details']) && preview['details'][key.slice(detailKey('').length)];
    return blocks[key] ?? [...own.values()].map((texts) => texts[key]).find(isRecord);
  };
  return {
    fault: (id) => sentence(model, 'faults', id, 'name') ?? id,
    question: (key) => sentence(about(key), 'title') ?? sentence(about(key), 'name') ?? key,
    answer: (key, answer) => sentence(about(key), 'answers', answer) ?? answer,
  };
}

/** The text of a file of figures with the changes of its own parts made; all else stays to the letter. */
export function rewritten(source: string, changes: readonly Change[]): string {
  const document = parseDocument(source);
  const figures = changes.flatMap(({ paths, after }) =>
    paths.flatMap((path, index) => {
      if (!document.has(path[0])) return [];
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
