/**
 * A journey under way in which any answer may still change. What was answered after the
 * changed place is kept and taken up again wherever the new way comes past its page: of the same
 * guide, on whatever track, the answer of the same track first: after an outage a blank display asks
 * about power again. A page that only borrows another's sentences is a page of its own.
 */
import { qualifyOther } from '../guide/ids.ts';
import type { AnswerId, Given, Graph, GraphNode, Journey } from '../guide/types.ts';
import { edgeAt, trace } from './trace.ts';

export interface EditableJourney {
  readonly journey: Journey;
  /** Answers given before that the way does not come past now; no node twice. */
  readonly later: Journey;
}

export const emptyJourney: EditableJourney = { journey: [], later: [] };

/** What names a page on all its tracks, among all guides. */
export function pageKey({ guide, page }: Pick<GraphNode, 'guide' | 'page'>): string {
  return qualifyOther(guide, page);
}

function keyAt({ nodes }: Graph, { at }: Given): string {
  const node = nodes.get(at);
  return node ? pageKey(node) : at;
}

/** An answer that tells of danger is about the moment it was given: it is never taken up again. */
function lasts(guide: Graph, node: GraphNode, answer: string): boolean {
  const edge = edgeAt(guide, node, answer);
  const to = edge && guide.nodes.get(edge.to);
  return to !== undefined && to.urgency !== 'emergency';
}

/** Go on from a journey's end with the kept answers, up to the first node that has none. */
function goOn(guide: Graph, journey: Journey, later: Journey): EditableJourney {
  const given = [...journey];
  const left = [...later];
  let { end } = trace(guide, journey);
  for (;;) {
    const here = end;
    const fitting = left.filter(
      (one) => keyAt(guide, one) === pageKey(here) && lasts(guide, here, one.answer),
    );
    const kept = fitting.find(({ at }) => at === here.id) ?? fitting[0];
    if (kept) left.splice(left.indexOf(kept), 1);
    const edge = kept && edgeAt(guide, here, kept.answer);
    const to = edge && guide.nodes.get(edge.to);
    if (!to) return { journey: given, later: left };
    given.push({ at: here.id, answer: edge.id });
    end = to;
  }
}

/** The kept answers without those of the journey's nodes and without repeats, the first one wins. */
function kept(guide: Graph, journey: Journey, later: Journey): Journey {
  const seen = new Set(journey.map(({ at }) => at));
  return later.filter(({ at }) => {
    if (seen.has(at) || !guide.nodes.has(at)) return false;
    seen.add(at);
    return true;
  });
}

/** Take over a journey from a code or an address: what fits, and the rest for later. */
export function takeOver(guide: Graph, journey: Journey): EditableJourney {
  const { steps, rest } = trace(guide, journey);
  const fits = journey.slice(0, steps.length);
  return goOn(guide, fits, kept(guide, fits, rest));
}

/** Note an answer to a question that the journey has not come to; at its end it is given. */
export function takeUp(
  guide: Graph,
  { journey, later }: EditableJourney,
  given: Given,
): EditableJourney {
  return goOn(guide, journey, kept(guide, journey, [given, ...later]));
}

/** Give another answer at one place of the journey, its length for the next one. */
export function change(
  guide: Graph,
  edited: EditableJourney,
  index: number,
  answer: string,
): EditableJourney {
  const before = edited.journey.slice(0, index);
  const { end } = trace(guide, before);
  if (before.length !== index || !edgeAt(guide, end, answer)) return edited;
  const journey = [...before, { at: end.id, answer: answer as AnswerId }];
  const later = kept(guide, journey, [...edited.journey.slice(index + 1), ...edited.later]);
  return goOn(guide, journey, later);
}

/**
 * The danger question, asked again in mid-call. A danger met on the way is an exit from where
 * the call stands; where there is no way out (an end, or "not sure"), the first answer changes.
 */
export function answerDanger(
  guide: Graph,
  edited: EditableJourney,
  answer: string,
): EditableJourney {
  const [first] = edited.journey;
  if (first?.answer === answer) return edited;
  const { end } = trace(guide, edited.journey);
  const start = guide.nodes.get(guide.start);
  const danger = start && edgeAt(guide, start, answer)?.to;
  const isExit = danger !== undefined && edgeAt(guide, end, answer)?.to === danger;
  return change(guide, edited, isExit ? edited.journey.length : 0, answer);
}
