/** What one code means for the technician who drives out: how urgent, which flags, how long. */
import { evidenceOf, seenFrom } from '../diagnosis/evidence.ts';
import type { Evidence, Model } from '../diagnosis/types.ts';
import type { Flag } from './staff-view.ts';
import { urgencies } from '../guide/types.ts';
import type { Urgency } from '../guide/types.ts';
import { bookGuide } from '../note/library.ts';
import type { BookGuide, BookNode, Library } from '../note/library.ts';
import type { Note } from '../note/types.ts';
import type { Figures } from './figures.ts';
import { dangerOf, endOf, flagsOf, guideOf, linesOf, type Line } from './sides.ts';

/** `open` where the guide was left before its end. */
export type VisitUrgency = Urgency | 'open';

/** The most urgent first. What is not known may be urgent: before what can wait. */
export const urgencyOrder: readonly VisitUrgency[] = [
  ...urgencies.filter((one) => one === 'emergency' || one === 'today'),
  'open',
  ...urgencies.filter((one) => one !== 'emergency' && one !== 'today'),
];

/** What the answers say, before any figure. */
export interface Seen {
  readonly note: Note;
  readonly guide: BookGuide;
  /** The guide the journey ended in: its faults are ranked. */
  readonly last: string;
  readonly end: BookNode;
  readonly urgency: VisitUrgency;
  /** The answer that led there; undefined for a journey without an answer. */
  readonly because: Line | undefined;
  readonly danger: Line | undefined;
  readonly flags: readonly Flag[];
  /** The figures of the last guide, where it has some. */
  readonly model: Model | undefined;
  /** As the last guide's figures name it. */
  readonly evidence: Evidence;
}

const UNKNOWN: Figures = { breakerOff: [], models: {}, sides: {} };

/** The guide of a note, which every note that was read has. */
export function guideFor(note: Note, library: Library): BookGuide {
  const book = library.get(note.release);
  const guide = book && bookGuide(book, note.guide);
  if (!guide) throw new RangeError(note.guide);
  return guide;
}

/** What a note says. Without figures: no flags and no model, as for a guide no longer published. */
export function seenOf(note: Note, library: Library, figures: Figures = UNKNOWN): Seen {
  const guide = guideFor(note, library);
  const lines = linesOf(guide, note.journey);
  const end = endOf(guide, note.journey);
  const last = guideOf(guide, end);
  const model = Object.hasOwn(figures.models, last) ? figures.models[last] : undefined;
  return {
    note,
    guide,
    last,
    end,
    urgency: end.ways.length > 0 ? 'open' : end.urgency,
    because: lines.at(-1),
    danger: dangerOf(lines),
    flags: flagsOf(figures.sides, guide, lines, end, figures.breakerOff),
    model,
    evidence: seenFrom(last, guide.id, evidenceOf(guide, note.journey, note.details)),
  };
}

/** The order of visits by urgency; equally urgent ones as they were given. */
export function byUrgency<T extends { readonly seen: Pick<Seen, 'urgency'> }>(
  visits: readonly T[],
): T[] {
  const place = ({ seen }: T) => urgencyOrder.indexOf(seen.urgency);
  return visits.toSorted((a, b) => place(a) - place(b));
}
