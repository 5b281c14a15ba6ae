/** Visits as this device keeps them, and as files. */
import './no-eval.ts';
import { named, readVisits, unknownNames } from '../../diagnosis/read-visits.ts';
import type { Declared, VisitsProblem } from '../../diagnosis/read-visits.ts';
import { conditionsIn } from '../../diagnosis/evidence.ts';
import { informative } from '../../diagnosis/posterior.ts';
import type { Evidence, Model } from '../../diagnosis/types.ts';
import { FORMAT, VERSION, visitSchema } from '../../diagnosis/visits-schema.ts';
import type { RecordedVisit, VisitsFile } from '../../diagnosis/visits-schema.ts';
import { textOf, type EncodingProblem } from '../../decode.ts';
import { fail, ok } from '../../result.ts';
import type { Result } from '../../result.ts';

/** One visit on this device. */
export interface StoredVisit {
  /** Tells it from every other: its own `id`, or for a file without ids its content. */
  readonly id: string;
  readonly guide: string;
  /** The note code it was recorded from; '' for one that came in a file. Never in a file. */
  readonly code: string;
  readonly visit: RecordedVisit;
}

/** Is a record of the database a visit? Another release, an extension or a failing disk may have written it. */
export function isStored(record: unknown): record is StoredVisit {
  const { id, guide, code, visit } = Object(record) as Readonly<Record<string, unknown>>;
  const texts = [id, guide, code].every((text) => typeof text === 'string');
  return texts && visitSchema.safeParse(visit).success;
}

/** More is no file of visits: a firm's year has some thousands. */
const LARGEST_FILE = 10_000_000;

/** The text of a file of visits. */
export async function fileText(file: File): Promise<Result<string, ImportProblem>> {
  if (file.size > LARGEST_FILE)
    return fail({ code: 'file-too-large', most: LARGEST_FILE / 1_000_000 });
  const bytes = await file.arrayBuffer().catch(() => undefined);
  return bytes ? textOf(new Uint8Array(bytes)) : fail({ code: 'file-unreadable' });
}

/** Records that are no visits, as a file's text for whoever can mend them. */
export function brokenFile(records: readonly unknown[]): string {
  const plain = (_: string, value: unknown) => (typeof value === 'bigint' ? String(value) : value);
  const texts = records.map((record) => {
    try {
      // Of undefined there is no JSON.
      return JSON.stringify(record ?? null, plain, 2);
    } catch {
      // A record that holds itself.
      return JSON.stringify(String(record));
    }
  });
  return `[${texts.join(',\n')}]\n`;
}

export type ImportProblem =
  | VisitsProblem
  | EncodingProblem
  | { readonly code: 'file-too-large'; readonly most: number }
  | { readonly code: 'file-unreadable' }
  /** An answer to something, or a result of a check, that the figures do not list. */
  | { readonly code: 'unknown-answer'; readonly visit: number; readonly name: string }
  | { readonly code: 'other-guide'; readonly guide: string }
  /** The guide's figures are not on this device and could not be fetched. */
  | { readonly code: 'figures-missing' };

/**
 * The evidence that tells something: answers that tables list, and those by which other answers
 * are judged, whether a cure was tried.
 */
function knownIn(model: Model, evidence: Evidence): Evidence {
  const keys = new Set(informative(model, evidence).map(({ key }) => key));
  const conditions = conditionsIn(model.evidence.flatMap(({ rules = [] }) => rules));
  return evidence.filter(({ key, answer }) => keys.has(key) || conditions.has(`${key}.${answer}`));
}

/** 128 random bits in hexadecimal. `crypto.randomUUID` is missing where a site has no TLS. */
function drawn(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/**
 * A visit to keep: the answers and results that the figures know, what it turned out to be.
 * `before`: what was kept for the same code, whose place it takes, under the same `id`, so that
 * a file written earlier does not count the visit a second time.
 */
export function recorded(
  of: { readonly model: Model; readonly code: string; readonly evidence: Evidence },
  found: Pick<RecordedVisit, 'fault' | 'parts' | 'minutes' | 'remark'>,
  before?: StoredVisit,
): StoredVisit {
  const id = before?.id ?? drawn();
  const known = knownIn(of.model, of.evidence);
  const answers = Object.fromEntries(known.map(({ key, answer }) => [key, answer]));
  const visit = { id, answers, ...found };
  return { id, guide: of.model.guide, code: of.code, visit };
}

/** The text of a file of one guide's visits, as `public/schema/visits.json` has it. */
export function asFile(guide: string, stored: readonly StoredVisit[]): string {
  const visits = stored.filter((one) => one.guide === guide).map(({ visit }) => visit);
  const file: VisitsFile = { format: FORMAT, version: VERSION, guide, visits };
  return `${JSON.stringify(file, null, 2)}\n`;
}

const all = (ids: readonly { readonly id: string }[]) =>
  Object.fromEntries(ids.map(({ id }) => [id, true]));

function declared({ faults, parts }: Model): Declared {
  return { faults: all(faults), parts: all(parts) };
}

/** No other text gets in, so nothing personal does. */
function unknownAnswers(visits: readonly RecordedVisit[], model: Model): ImportProblem[] {
  return visits.flatMap(({ answers }, index) => {
    const given = Object.entries(answers).map(([key, answer]) => ({ key, answer }));
    const known = new Set(knownIn(model, given).map(({ key }) => key));
    return given
      .filter(({ key }) => !known.has(key))
      .map(({ key, answer }) => ({
        code: 'unknown-answer' as const,
        visit: index + 1,
        name: `${key}: ${answer}`,
      }));
  });
}

/** The figures of a guide; fetched by `figures.ts`. */
export type ModelOf = (guide: string) => Promise<Result<Model, ImportProblem>>;

/**
 * The visits of a file's text. A file of a guide the site does not have, or with a name that
 * the guide's figures lack, is refused as a whole.
 */
export async function fromFile(
  text: string,
  modelOf: ModelOf,
): Promise<Result<readonly StoredVisit[], readonly ImportProblem[]>> {
  const file = readVisits(text);
  if (!file.ok) return file;
  const { guide } = file.value;
  const model = await modelOf(guide);
  if (!model.ok) return fail([model.error]);
  const tables = new Set(model.value.evidence.map(({ key }) => key));
  const visits = file.value.visits.map((visit) => named(visit, guide, tables));
  const unknown = [
    ...unknownNames(file.value, declared(model.value)),
    ...unknownAnswers(visits, model.value),
  ];
  if (unknown.length > 0) return fail(unknown);
  const times = new Map<string, number>();
  return ok(
    visits.map((visit): StoredVisit => {
      const content = JSON.stringify([guide, visit]);
      // Two visits may be alike; the same file read again has them in the same places.
      const time = (times.get(content) ?? 0) + 1;
      times.set(content, time);
      return { id: visit.id ?? `${content}#${String(time)}`, guide, code: '', visit };
    }),
  );
}
