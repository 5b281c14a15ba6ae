/**
 * The job a call ends in: what the code says, how urgent it is and why, and who called.
 * Plain data for another program (`public/schema/job.json`); its words are made at the edge.
 */
import type { State } from '../journey/trace.ts';
import type { NoteCode } from '../note/types.ts';
import type { VisitUrgency, VisitView } from './read-visit.ts';

/** What is known of the caller. It is in no code and no address. */
export const callerFields = [
  'name',
  'phone',
  'address',
  'model',
  'serial',
  'brand',
  'pays',
  'access',
  'appointment',
  'remark',
] as const;
export type CallerField = (typeof callerFields)[number];
export type Caller = Readonly<Partial<Record<CallerField, string>>>;

/** Most characters kept of each. */
export const callerMost = {
  name: 80,
  phone: 40,
  address: 160,
  model: 60,
  serial: 60,
  brand: 60,
  pays: 12,
  access: 160,
  appointment: 80,
  remark: 500,
} as const satisfies Record<CallerField, number>;

/** Who pays for the visit: what `pays` may hold. */
export const payers = ['owner', 'tenant', 'landlord', 'warranty'] as const;

export interface Job {
  readonly version: 1;
  readonly code: NoteCode;
  /** The caller has read the code back without a difference. */
  readonly codeReadBack: boolean;
  readonly guide: string;
  readonly release: number;
  /** Day the note was made, ISO 8601. */
  readonly made: string;
  /** `open` where the guide was left before its end. */
  readonly urgency: VisitUrgency;
  /** Where the journey stands and the answer that led there. */
  readonly outcome: {
    readonly kind: State;
    readonly at: string;
    readonly because: readonly [node: string, answer: string];
  };
  readonly breakerStaysOff: boolean;
  readonly answers: readonly (readonly [node: string, answer: string])[];
  readonly error: string;
  readonly details: Readonly<Record<string, string>>;
  /** Nodes whose cautions the journey came past: those read out in this call, and the others. */
  readonly cautions: { readonly read: readonly string[]; readonly unread: readonly string[] };
  readonly caller: Caller;
}

/** What a job is made of besides what the note says. */
export interface JobParts {
  readonly code: NoteCode;
  readonly codeReadBack: boolean;
  /** ISO 8601 date. */
  readonly made: string;
  readonly breakerStaysOff: boolean;
  readonly cautions: Job['cautions'];
  readonly caller: Caller;
}

/**
 * One line of plain text: control characters and marks that turn the direction of writing
 * out, every run of spaces one space, at most `most` characters. So nothing a caller
 * says can look like a line of the job's own.
 */
export function oneLine(text: string, most: number): string {
  const line = text
    .toWellFormed()
    .replace(/[\s\p{Cc}\u2028\u2029]+/gu, ' ')
    .replace(/[\p{Bidi_Control}\ufeff]+/gu, '')
    .trim();
  return [...line].slice(0, most).join('').trim();
}

/** A field as it is kept: one line of text, of a remark several, of `pays` a name or nothing. */
function tidyField(field: CallerField, text: string): string {
  const line = oneLine(text, callerMost[field]);
  if (field === 'pays') return payers.find((name) => name === line) ?? '';
  if (field !== 'remark') return line;
  const lines = text.split(/\r\n|[\r\n]/).map((one) => oneLine(one, callerMost.remark));
  const whole = lines.filter((one) => one !== '').join('\n');
  return [...whole].slice(0, callerMost.remark).join('').trim();
}

/** What is known of a caller, tidy; empty fields are left out. */
export function tidyCaller(caller: Caller): Caller {
  return Object.fromEntries(
    callerFields.flatMap((field) => {
      const text = tidyField(field, caller[field] ?? '');
      return text === '' ? [] : [[field, text]];
    }),
  );
}

/** Make a job; undefined for a journey without an answer. */
export function makeJob(view: VisitView, parts: JobParts): Job | undefined {
  const { note, guide, steps, because, end, state, urgency } = view;
  const { code, codeReadBack, made, breakerStaysOff, cautions, caller } = parts;
  if (!because) return undefined;
  return {
    version: 1,
    code,
    codeReadBack,
    guide: guide.id,
    release: note.release,
    made,
    urgency,
    outcome: { kind: state, at: end.id, because: [because.node.id, because.edge.id] },
    breakerStaysOff,
    answers: steps.map(({ node, edge }) => [node.id, edge.id] as const),
    error: note.error,
    details: note.details,
    cautions,
    caller: tidyCaller(caller),
  };
}
