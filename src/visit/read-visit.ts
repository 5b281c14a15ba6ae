/**
 * What a note says to staff, as one view model: the preview, the route, the desk's job and the
 * command line only show it.
 */
import { complaintOf, evidenceOf, observed } from '../diagnosis/evidence.ts';
import type { Evidence, Model } from '../diagnosis/types.ts';
import { parseId } from '../guide/ids.ts';
import { urgencies } from '../guide/types.ts';
import type { GuideId, Urgency } from '../guide/types.ts';
import { notAsked, trace } from '../journey/trace.ts';
import type { State, Step as StepOf } from '../journey/trace.ts';
import { codebookGuide } from '../note/codebook.ts';
import type { CodebookGuide, CodebookNode, Codebooks } from '../note/codebook.ts';
import type { Note } from '../note/types.ts';
import { groups } from './staff-view.ts';
import type { Group, StaffViews } from './staff-view.ts';

/** What is known of a guide besides its codebook, and of those it hands over to. */
export interface Figures {
  /** Guide → the cut of the model for journeys that begin in it. */
  readonly models: Readonly<Record<string, Model>>;
  readonly staffViews: StaffViews;
}

/** `open` where the guide was left before its end. */
export type VisitUrgency = Urgency | 'open';

/** Who must release a range before anybody works on it. */
export type HeldBy = 'gas' | 'air' | 'fire' | 'power' | 'people' | 'unknown';

/** By the names that emergency stops go by in the releases. */
const HELD_BY: Readonly<Record<string, HeldBy>> = {
  'stop-gas': 'gas',
  'stop-gas-on': 'gas',
  'stop-co': 'air',
  'stop-alarm': 'air',
  'stop-fire': 'fire',
  'stop-pan-fire': 'fire',
  'stop-electric': 'power',
  'stop-burn': 'people',
  'stop-glass': 'people',
  'stop-trapped': 'people',
};

/** The most urgent first. What is not known may be urgent: before what can wait. */
export const urgencyOrder: readonly VisitUrgency[] = [
  ...urgencies.filter((one) => one === 'emergency' || one === 'today'),
  'open',
  ...urgencies.filter((one) => one !== 'emergency' && one !== 'today'),
];

export type Step = StepOf<CodebookNode>;

/** A journey's answers in one guide, as the technician looks for them. */
export interface VisitLeg {
  readonly guide: GuideId;
  /** Answers to questions, empty groups left out. */
  readonly groups: readonly (readonly [Group, readonly Step[]])[];
}

export interface VisitView {
  readonly note: Note;
  readonly guide: CodebookGuide;
  /** The guide the journey stands in, or ended in: the complaint, as far as it is known. */
  readonly last: GuideId;
  readonly end: CodebookNode;
  readonly state: State;
  readonly urgency: VisitUrgency;
  /** The answer that led there; undefined for a journey without an answer. */
  readonly because: Step | undefined;
  /** The answer that told of a danger, where one did: it leads to an emergency stop. */
  readonly danger: Step | undefined;
  /** Before a visit; undefined but in an emergency. */
  readonly heldBy: HeldBy | undefined;
  /** Each once, in the order of `content/flags.yaml`. */
  readonly flags: readonly string[];
  /** All answers, in order. */
  readonly steps: readonly Step[];
  readonly legs: readonly VisitLeg[];
  /** What was done, in order. */
  readonly tried: readonly Step[];
  readonly notAsked: readonly CodebookNode[];
  /** The figures, where they know the complaint. */
  readonly model: Model | undefined;
  /** As the figures name it. A journey that ended at a stop ends in a visit. */
  readonly evidence: Evidence;
}

const UNKNOWN: Figures = { models: {}, staffViews: {} };

/** The guide of a note, which every note that was read has. */
function guideFor(note: Note, codebooks: Codebooks): CodebookGuide {
  const codebook = codebooks.get(note.release);
  const guide = codebook && codebookGuide(codebook, note.guide);
  if (!guide) throw new RangeError(note.guide);
  return guide;
}

function grouped(staffViews: StaffViews, steps: readonly Step[]): VisitLeg['groups'] {
  const groupOf = ({ node }: Step): Group =>
    staffViews[node.guide]?.groups[parseId(node.sentences).name] ?? 'happened';
  const questions = steps.filter(({ node }) => node.kind === 'question');
  return groups
    .map((group) => [group, questions.filter((step) => groupOf(step) === group)] as const)
    .filter(([, list]) => list.length > 0);
}

/**
 * What a note says. Without figures no group and no model is known, as for a guide no longer
 * published. Throws RangeError for a note that was not read with this library.
 */
export function readVisit(note: Note, codebooks: Codebooks, figures: Figures = UNKNOWN): VisitView {
  const guide = guideFor(note, codebooks);
  const traced = trace(guide, note.journey);
  const { steps, end, state, flags } = traced;
  const because = steps.at(-1);
  const emergency = end.urgency === 'emergency';
  // The danger question's stops are the first guide's, wherever a danger was told.
  const last = (state === 'open' ? undefined : because?.node.guide) ?? end.guide;
  const course = { first: guide.id, last, visit: state === 'stop' };
  const model = Object.hasOwn(figures.models, guide.id) ? figures.models[guide.id] : undefined;
  const known = model && complaintOf(model, course) !== undefined ? model : undefined;
  const told = evidenceOf(guide, note.journey, note.details);
  return {
    note,
    guide,
    last,
    end,
    state,
    urgency: state === 'open' ? state : end.urgency,
    because,
    danger: emergency ? because : undefined,
    heldBy: emergency ? (HELD_BY[parseId(end.sentences).name] ?? 'unknown') : undefined,
    flags,
    steps,
    legs: traced.legs.map((leg) => ({
      guide: leg.guide,
      groups: grouped(figures.staffViews, leg.steps),
    })),
    tried: steps.filter(({ node }) => node.kind === 'step'),
    notAsked: notAsked(guide, traced),
    model: known,
    evidence: known ? observed(known, course, told) : told,
  };
}

/** The order of visits by urgency, unknown where there is no code; equally urgent ones as they were given. */
export function byUrgency<T extends { readonly seen: Pick<VisitView, 'urgency'> | undefined }>(
  visits: readonly T[],
): T[] {
  const place = ({ seen }: T) => urgencyOrder.indexOf(seen?.urgency ?? 'open');
  return visits.toSorted((a, b) => place(a) - place(b));
}
