/** Visits as this device keeps them, and as files. Pure. */
import './no-eval.ts';
import { readVisits, unknownNames } from '../../diagnosis/read-visits.ts';
import type { Declared, VisitsProblem } from '../../diagnosis/read-visits.ts';
import type { Evidence } from '../../diagnosis/types.ts';
import type { Visit, VisitsFile } from '../../diagnosis/visits-schema.ts';
import { fail, ok } from '../../result.ts';
import type { Result } from '../../result.ts';

/** One visit on this device. */
export interface Kept {
  /** Tells it from every other: its own `id`, or for a file without ids its content. */
  readonly id: string;
  readonly guide: string;
  /** The note code it was recorded from; '' for one that came in a file. Never in a file. */
  readonly code: string;
  readonly visit: Visit;
}

/** More is no file of visits: a firm's year has some thousands. */
export const LARGEST_FILE = 10_000_000;

export type ImportProblem =
  | VisitsProblem
  | { readonly code: 'file-too-large'; readonly most: number }
  | { readonly code: 'file-unreadable' }
  | { readonly code: 'other-guide'; readonly guide: string }
  /** The guide's figures are not on this device and could not be fetched. */
  | { readonly code: 'figures-missing' };

/** 128 random bits in hexadecimal. `crypto.randomUUID` is missing where a site has no TLS. */
function drawn(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** A visit to keep: what was answered and checked, what it turned out to be. */
export function recorded(
  of: { readonly guide: string; readonly code: string; readonly evidence: Evidence },
  fault: string,
  parts: readonly string[],
): Kept {
  const id = drawn();
  const answers = Object.fromEntries(of.evidence.map(({ key, answer }) => [key, answer]));
  return {
    id,
    guide: of.guide,
    code: of.code,
    visit: { id, answers, fault, parts: [...parts] },
  };
}

/** The text of a file of one guide's visits, as `public/schema/visits.json` has it. */
export function asFile(guide: string, kept: readonly Kept[]): string {
  const visits = kept.filter((one) => one.guide === guide).map(({ visit }) => visit);
  const file: VisitsFile = { format: 'hobnote-visits', version: 1, guide, visits };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** What is needed of a guide to read its visits; made by `figures.ts`. */
export type DeclaredOf = (guide: string) => Promise<Result<Declared, ImportProblem>>;

/**
 * The visits of a file's text. A file of a guide the site does not have, or with a name that
 * the guide's figures lack, is refused as a whole.
 */
export async function fromFile(
  text: string,
  declaredOf: DeclaredOf,
): Promise<Result<readonly Kept[], readonly ImportProblem[]>> {
  const file = readVisits(text);
  if (!file.ok) return file;
  const { guide, visits } = file.value;
  const figures = await declaredOf(guide);
  if (!figures.ok) return fail([figures.error]);
  const unknown = unknownNames(file.value, figures.value);
  if (unknown.length > 0) return fail(unknown);
  const times = new Map<string, number>();
  return ok(
    visits.map((visit): Kept => {
      const content = JSON.stringify([guide, visit]);
      // Two visits may be alike; the same file read again has them in the same places.
      const time = (times.get(content) ?? 0) + 1;
      times.set(content, time);
      return { id: visit.id ?? `${content}#${String(time)}`, guide, code: '', visit };
    }),
  );
}
