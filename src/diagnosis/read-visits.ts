import { fail, ok } from '../result.ts';
import type { Result } from '../result.ts';
import { COMPLAINT, keyIn } from './evidence.ts';
import { FORMAT, UNLISTED, VERSION, visitsFile } from './visits-schema.ts';
import type { RecordedVisit, VisitsFile } from './visits-schema.ts';

/** Why a file of visits cannot be used, as data. */
export type VisitsProblem =
  /** `reason`: the parser's own words. */
  | { readonly code: 'not-json'; readonly reason: string }
  /** A later form of such files than this copy knows. */
  | { readonly code: 'newer-file'; readonly version: number }
  /** `path`: keys joined by dots. `issue`: the schema's own code. */
  | { readonly code: 'wrong-shape'; readonly path: string; readonly issue: string }
  /** `visit`: its place in the file, the first is 1. */
  | { readonly code: 'unknown-fault'; readonly visit: number; readonly name: string }
  | { readonly code: 'unknown-part'; readonly visit: number; readonly name: string };

/** The text of a file of visits; the names in it are not looked at. */
export function readVisits(source: string): Result<VisitsFile, readonly VisitsProblem[]> {
  let value: unknown;
  try {
    value = JSON.parse(source.replace(/^\ufeff/, ''));
  } catch (error) {
    return fail([{ code: 'not-json', reason: error instanceof Error ? error.message : '' }]);
  }
  const { format, version } = Object(value) as Readonly<Record<string, unknown>>;
  if (format === FORMAT && typeof version === 'number' && version > VERSION)
    return fail([{ code: 'newer-file', version }]);
  const parsed = visitsFile.safeParse(value);
  if (parsed.success) return ok(parsed.data);
  return fail(
    parsed.error.issues.map(({ path, code }) => ({
      code: 'wrong-shape',
      path: path.join('.'),
      issue: code,
    })),
  );
}

/** What the figures must declare for a file of visits to be about them. */
export interface Declared {
  readonly faults: Readonly<Record<string, unknown>>;
  readonly parts: Readonly<Record<string, unknown>>;
}

/** Names of faults and parts that the figures do not declare. */
export function unknownNames({ visits }: VisitsFile, declared: Declared): VisitsProblem[] {
  return visits.flatMap(({ fault, parts }, index): VisitsProblem[] => {
    const visit = index + 1;
    const known = UNLISTED.includes(fault) || Object.hasOwn(declared.faults, fault);
    const missing = parts.filter((name) => !Object.hasOwn(declared.parts, name));
    return [
      ...(known ? [] : [{ code: 'unknown-fault' as const, visit, name: fault }]),
      ...missing.map((name) => ({ code: 'unknown-part' as const, visit, name })),
    ];
  });
}

/** Each visit once: a second one with an `id` met before is left out. Those without stay. */
export function onceEach(visits: readonly RecordedVisit[]): readonly RecordedVisit[] {
  const met = new Set<string>();
  return visits.filter(({ id }) => {
    if (id === undefined) return true;
    const known = met.has(id);
    met.add(id);
    return !known;
  });
}

/**
 * A visit as tables name its answers, with its complaint. Files from before the model was one
 * name a guide's own pages without it, and have the guide for a complaint.
 */
export function named(
  visit: RecordedVisit,
  guide: string,
  tables: ReadonlySet<string>,
): RecordedVisit {
  const answers = Object.entries(visit.answers).map(([key, answer]) => [
    keyIn(tables, guide, key),
    answer,
  ]);
  return {
    ...visit,
    answers: { [COMPLAINT]: guide, ...(Object.fromEntries(answers) as RecordedVisit['answers']) },
  };
}
