/** The figures of a visit: shares, minutes, parts. Visits alike in what tells faults apart share one. */
import { checkKey } from '../diagnosis/evidence.ts';
import { meanMinutes, minutesFor, minutesOf, type Minutes } from '../diagnosis/minutes.ts';
import { at } from '../diagnosis/numbers.ts';
import { plan } from '../diagnosis/plan.ts';
import { shares } from '../diagnosis/posterior.ts';
import { partChances, type PartChance } from '../diagnosis/parts.ts';
import type { Evidence, FaultId, Model } from '../diagnosis/types.ts';
import type { VisitView } from './read-visit.ts';

/** A cautious figure is enough in so many of such visits: nine in ten. Our own choice. */
export const CAUTIOUS = 0.9;

export interface Assessed {
  readonly model: Model;
  /** In the model's order. */
  readonly shares: readonly number[];
  /** The likeliest first. */
  readonly ranking: readonly { readonly fault: FaultId; readonly share: number }[];
  /** The likeliest first, those that no fault needs left out. */
  readonly parts: readonly PartChance[];
  /** Until the fault is found by the best order, given that one of its checks finds it. */
  readonly minutes: Minutes;
  readonly expected: number;
  /** Minutes enough with chance `CAUTIOUS`. */
  readonly cautious: number;
  /** Share of faults that no check finds. */
  readonly leftOver: number;
}

function assess(model: Model, evidence: Evidence): Assessed {
  const now = shares(model, evidence);
  const { best, leftOver } = plan(model, evidence);
  const minutes = minutesOf(best);
  return {
    model,
    shares: now,
    ranking: model.faults
      .map(({ id }, index) => ({ fault: id, share: at(now, index) }))
      .sort((a, b) => b.share - a.share),
    parts: partChances(model, now),
    minutes,
    expected: meanMinutes(minutes),
    cautious: minutesFor(minutes, CAUTIOUS),
    leftOver,
  };
}

type Visited = Pick<VisitView, 'model' | 'evidence' | 'urgency'>;

/** Key and answer of everything that tells a model's faults apart. */
function tellingOf(model: Model): ReadonlySet<string> {
  return new Set([
    ...model.evidence.flatMap(({ key, answers }) => answers.map((answer) => `${key}=${answer}`)),
    ...model.checks.flatMap(({ id, results }) =>
      results.map((result) => `${checkKey(id)}=${result.id}`),
    ),
  ]);
}

/**
 * An assessor that remembers: visits with the same telling answers are worked out once. Undefined
 * without figures, and in an emergency, where help comes before any repair.
 */
export function makeAssess(): (visit: Visited) => Assessed | undefined {
  const known = new Map<Model, { telling: ReadonlySet<string>; by: Map<string, Assessed> }>();
  return ({ model, evidence, urgency }) => {
    if (!model || urgency === 'emergency') return undefined;
    const kept = known.get(model) ?? { telling: tellingOf(model), by: new Map<string, Assessed>() };
    known.set(model, kept);
    const telling = evidence.filter(({ key, answer }) => kept.telling.has(`${key}=${answer}`));
    const key = telling
      .map((one) => `${one.key}=${one.answer}`)
      .toSorted()
      .join(' ');
    const found = kept.by.get(key) ?? assess(model, telling);
    kept.by.set(key, found);
    return found;
  };
}
