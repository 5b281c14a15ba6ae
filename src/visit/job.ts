/**
 * The job a call ends in, the one form in which a call is handed over: what the code says, how
 * urgent it is, who called and what to bring. Plain data for another program
 * (`public/schema/job.json`); its words are made at the edge, and `hand-over.ts` reads both back.
 */
import { defined } from '../defined.ts';
import { loadFor, partChances, type PartChance } from '../diagnosis/parts.ts';
import { shares } from '../diagnosis/posterior.ts';
import type { State } from '../journey/trace.ts';
import type { NoteCode } from '../note/types.ts';
import { urgencyOrder, type VisitUrgency, type VisitView } from './read-visit.ts';

/** What is known of the customer, in the order staff ask. It is in no code and no address. */
export const callerFields = [
  ...(['name', 'phone', 'address', 'model', 'serial', 'brand'] as const),
  ...(['payer', 'access', 'time', 'remark'] as const),
];
export type CallerField = (typeof callerFields)[number];
export type Caller = Readonly<Partial<Record<CallerField, string>>>;

/** Most characters kept of each. A remark may have several lines. */
export const callerMost = {
  name: 80,
  phone: 40,
  address: 160,
  model: 60,
  serial: 60,
  brand: 60,
  payer: 80,
  access: 160,
  time: 80,
  remark: 500,
} as const satisfies Record<CallerField, number>;

/** Most urgent things first, as whoever takes it over reads them. */
export interface Job {
  readonly version: 2;
  /** `open` where the guide was left before its end. */
  readonly urgency: VisitUrgency;
  /** The complaint. */
  readonly guide: string;
  readonly error: string;
  /** Safety flags, danger to people first. */
  readonly flags: readonly string[];
  /** Time of the call by the firm's clock, to the minute: `2026-11-28T14:05`. */
  readonly called?: string;
  /** When the last answer was given, as `called`: what the answers say has aged since. */
  readonly answered?: string;
  /** Who of the staff took the call. */
  readonly clerk?: string;
  readonly caller: Caller;
  /** What to load, the likeliest first; none in an emergency, which others must release first. */
  readonly parts: readonly PartChance[];
  /** Absent where no answer was given yet. */
  readonly code?: NoteCode;
  /** Codes of the caller's other problems, for the same visit. */
  readonly also?: readonly NoteCode[];
  /** Whether the caller has read the code back without a difference, where that is known. */
  readonly codeReadBack?: boolean;
  /** Where the code opens. */
  readonly link?: string;
  readonly release: number;
  /** Day the note was made, ISO 8601. */
  readonly made: string;
  /** Where the journey stands and the answer that led there. */
  readonly outcome?: {
    readonly kind: State;
    readonly at: string;
    readonly because: readonly [node: string, answer: string];
  };
  readonly breakerStaysOff?: boolean;
  readonly answers: readonly (readonly [node: string, answer: string])[];
  readonly details: Readonly<Record<string, string>>;
  /** Nodes whose cautions the journey came past: those read out in this call, and the others. */
  readonly cautions?: { readonly read: readonly string[]; readonly unread: readonly string[] };
}

/** What a job is made of besides what the note says. */
export type JobParts = Pick<Job, 'made' | 'caller'> &
  Partial<Job> & {
    /** What the other problems' codes say. */
    readonly others?: readonly VisitView[];
  };

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

const LINE_END = /\r\n?|[\n\u2028\u2029]/u;

/** Lines of a text that may have several, tidy; empty ones are left out. */
export const linesOf = (text: string): string[] =>
  text
    .split(LINE_END)
    .map((line) => oneLine(line, line.length))
    .filter((line) => line !== '');

/** A field as it is handed over: tidy, one line but for a remark, cut at its most characters. */
function tidyField(field: CallerField, text: string): string {
  if (field !== 'remark') return oneLine(text, callerMost[field]);
  return [...linesOf(text).join('\n')].slice(0, callerMost[field]).join('').trim();
}

/** What is known of a caller, tidy, wherever it comes from: what is empty or no text is left out. */
export function tidyCaller(caller: Readonly<Partial<Record<CallerField, unknown>>>): Caller {
  return Object.fromEntries(
    callerFields.flatMap((field) => {
      const given = caller[field];
      const text = typeof given === 'string' ? tidyField(field, given) : '';
      return text === '' ? [] : [[field, text]];
    }),
  );
}

/** What to load for a visit's problems, each part once; none in an emergency. */
function loadOf(views: readonly VisitView[]): readonly PartChance[] {
  if (views.some(({ urgency }) => urgency === 'emergency')) return [];
  const all = views.flatMap(({ model, evidence }) => {
    const now = model ? shares(model, evidence) : [];
    const load = model ? loadFor(model, now).parts : [];
    return model ? partChances(model, now).filter(({ part }) => load.includes(part)) : [];
  });
  const likeliest = all.toSorted((a, b) => b.chance - a.chance);
  return likeliest.filter(({ part }, i) => likeliest.findIndex((one) => one.part === part) === i);
}

/** Make a job; undefined where neither an answer nor anything about the caller is known. */
export function makeJob(view: VisitView, parts: JobParts): Job | undefined {
  const { note, guide, steps, because, end, state } = view;
  const { called, answered, code, also, codeReadBack, link, made, breakerStaysOff, cautions } =
    parts;
  const clerk = oneLine(parts.clerk ?? '', callerMost.name) || undefined;
  const caller = tidyCaller(parts.caller);
  const views = [view, ...(parts.others ?? [])];
  if (!because && Object.keys(caller).length === 0) return undefined;
  return {
    version: 2,
    // The visit's: that of its most urgent problem.
    urgency: urgencyOrder.find((one) => views.some(({ urgency }) => urgency === one)) ?? 'open',
    guide: guide.id,
    error: parts.error ?? note.error,
    flags: [...new Set(views.flatMap(({ flags }) => flags))],
    ...defined({ called, answered, clerk }),
    caller,
    parts: because ? loadOf(views) : [],
    ...(code && because ? defined({ code, codeReadBack, link }) : {}),
    ...(also && also.length > 0 ? { also } : {}),
    release: note.release,
    made,
    ...(because
      ? { outcome: { kind: state, at: end.id, because: [because.node.id, because.edge.id] } }
      : {}),
    ...defined({ breakerStaysOff }),
    answers: steps.map(({ node, edge }) => [node.id, edge.id] as const),
    details: note.details,
    ...(cautions && because ? { cautions } : {}),
  };
}
