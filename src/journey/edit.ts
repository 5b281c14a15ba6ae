/**
 * A journey under way in which any answer may still change. What was answered after the
 * changed place is kept and taken up again wherever the new way comes past it.
 */
import type { AnswerId, Given, Journey } from '../guide/types.ts';
import type { BookGuide, BookNode, Way } from '../note/library.ts';

export interface Call {
  readonly journey: Journey;
  /** Answers given before that the way does not come past now; no place twice. */
  readonly later: Journey;
}

export const newCall: Call = { journey: [], later: [] };

/** How far a journey can be followed. */
export interface Followed {
  /** The nodes its answers were given at. */
  readonly nodes: readonly BookNode[];
  /** Where it stands: the next question, or the end. */
  readonly end: BookNode;
  /** What does not fit from there on. */
  readonly rest: Journey;
}

/** Follow a journey from the guide's start as far as it fits. */
export function follow(guide: BookGuide, journey: Journey): Followed {
  const nodes: BookNode[] = [];
  let end = guide.start;
  for (const [index, { at, answer }] of journey.entries()) {
    const way = at === end.id ? end.byAnswer.get(answer) : undefined;
    if (!way) return { nodes, end, rest: journey.slice(index) };
    nodes.push(end);
    end = way.to;
  }
  return { nodes, end, rest: [] };
}

/**
 * What stands for a node on every track: copies are named after their sentences (`since`,
 * `since-cold`). A node that only borrows another's sentences (`try-last`) is a place of its own.
 */
export function placeOf(node: BookNode): string {
  const [id, text]: [string, string] = [node.id, node.text];
  return id === text || id.startsWith(`${text}-`) ? text : id;
}

function placeAt(guide: BookGuide, { at }: Given): string {
  const node = guide.nodes.get(at);
  return node ? placeOf(node) : at;
}

/** An answer that tells of danger is about the moment it was given: it is never taken up again. */
function lasts(way: Way | undefined): way is Way {
  return way !== undefined && way.to.urgency !== 'emergency';
}

/** Go on from a journey's end with the kept answers, up to the first node that has none. */
function goOn(guide: BookGuide, journey: Journey, later: Journey): Call {
  const given = [...journey];
  const left = [...later];
  let { end } = follow(guide, journey);
  for (;;) {
    const here = end;
    const fits = (one: Given): boolean =>
      placeAt(guide, one) === placeOf(here) && lasts(here.byAnswer.get(one.answer));
    const index = left.findIndex(fits);
    const [kept] = index < 0 ? [] : left.splice(index, 1);
    const way = kept && here.byAnswer.get(kept.answer);
    if (!way) return { journey: given, later: left };
    given.push({ at: here.id, answer: way.answer });
    end = way.to;
  }
}

/** The kept answers without those of the journey's places and without repeats, the first one wins. */
function kept(guide: BookGuide, journey: Journey, later: Journey): Journey {
  const seen = new Set(journey.map((one) => placeAt(guide, one)));
  return later.filter((one) => {
    const place = placeAt(guide, one);
    if (seen.has(place) || !guide.nodes.has(one.at)) return false;
    seen.add(place);
    return true;
  });
}

/** Take over a journey from a code or an address: what fits, and the rest for later. */
export function takeOver(guide: BookGuide, journey: Journey): Call {
  const { nodes, rest } = follow(guide, journey);
  const fits = journey.slice(0, nodes.length);
  return goOn(guide, fits, kept(guide, fits, rest));
}

/** Give another answer at one place of the journey, its length for the next one. */
export function change(guide: BookGuide, call: Call, index: number, answer: string): Call {
  const before = call.journey.slice(0, index);
  const { end } = follow(guide, before);
  if (before.length !== index || !end.byAnswer.has(answer)) return call;
  const journey = [...before, { at: end.id, answer: answer as AnswerId }];
  const later = kept(guide, journey, [...call.journey.slice(index + 1), ...call.later]);
  return goOn(guide, journey, later);
}

/**
 * The danger question, asked again in mid-call. A danger met on the way is an exit from where
 * the call stands; where there is no way out (an end, or "not sure"), the first answer changes.
 */
export function answerDanger(guide: BookGuide, call: Call, answer: string): Call {
  const [first] = call.journey;
  if (first?.answer === answer) return call;
  const { end } = follow(guide, call.journey);
  const danger = guide.start.byAnswer.get(answer)?.to;
  const isExit = danger !== undefined && end.byAnswer.get(answer)?.to === danger;
  return change(guide, call, isExit ? call.journey.length : 0, answer);
}
