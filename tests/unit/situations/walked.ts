import { expect } from 'vitest';
import { complaintOf, evidenceOf, observed } from '../../../src/diagnosis/evidence.ts';
import { plan } from '../../../src/diagnosis/plan.ts';
import { posterior } from '../../../src/diagnosis/posterior.ts';
import { parseJourney } from '../../../src/address/journey-text.ts';
import type { Guide, Journey, Urgency } from '../../../src/guide/types.ts';
import { trace } from '../../../src/journey/trace.ts';
import { guides, models } from '../../../src/content/load.ts';

/** A person and what they answer, with what should come of it. */
export interface Situation {
  /** Who, and what happened; the test's name. */
  readonly who: string;
  /** Where it is not the one that the file is about. */
  readonly guide?: string;
  /** Answers in order as `page.answer`, pages as in the address or, on any track, by their sentences. */
  readonly way: string;
  /** The page it ends at. */
  readonly end: string;
  readonly urgency: Urgency;
  /** What the technician sees first; left out where nobody comes, or nothing was told yet. */
  readonly fault?: string;
  readonly check?: string;
  /** Optional details given on the note page. */
  readonly details?: Readonly<Record<string, string>>;
}

/** A journey from pages as the address has them or, on any track, by their sentences. */
export function journeyOf(guide: Guide, way: string): Journey {
  let at = guide.nodes.get(guide.start);
  return parseJourney(way.split(' ').join('~')).map(({ at: name, answer }) => {
    const here = String(at?.sentences) === String(name) ? (at?.id ?? name) : name;
    const to = guide.nodes.get(here)?.answers.find(({ id }) => id === answer)?.to;
    at = to && guide.nodes.get(to);
    return { at: here, answer };
  });
}

/** What the published guides and figures make of answers given in a guide. */
export function walked(name: string, way: string, details: Situation['details'] = {}) {
  const guide = guides().find(({ id }) => (id as string) === name);
  if (!guide) throw new Error(`no guide ${name}`);
  const journey = journeyOf(guide, way);
  const { end, rest } = trace(guide, journey);
  if (rest.length > 0) throw new Error(`${end.id}: ${JSON.stringify(rest)}`);
  const course = { first: name, last: end.guide, visit: end.kind === 'stop' };
  const model = models()[name];
  // A complaint without figures ranks nothing.
  if (!model || complaintOf(model, course) === undefined)
    return { end, answers: journey.length, fault: undefined, check: undefined };
  const evidence = observed(model, course, evidenceOf(guide, journey, details));
  const [likeliest] = posterior(model, evidence).toSorted((a, b) => b.share - a.share);
  return {
    end,
    answers: journey.length,
    fault: likeliest?.fault as string | undefined,
    check: plan(model, evidence).best.steps[0]?.check as string | undefined,
  };
}

/** Each situation ends where it should, with what the technician should see first. */
export const expectWalked =
  (own: string) =>
  ({ guide = own, way, details, ...meant }: Situation): void => {
    const { end, fault, check } = walked(guide, way, details);
    expect(end.id).toBe(meant.end);
    expect(end.urgency).toBe(meant.urgency);
    if (meant.fault !== undefined) expect(fault).toBe(meant.fault);
    if (meant.check !== undefined) expect(check).toBe(meant.check);
  };

/** A page is come to after no more answers than that. */
export const expectAtMost =
  (guide: string) =>
  (_what: string, most: number, way: string, page: string): void => {
    const got = walked(guide, way);
    expect(got.end.page).toBe(page);
    expect(got.answers).toBeLessThanOrEqual(most);
  };
