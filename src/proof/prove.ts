import type { Guide, GuideId, Journey } from '../guide/types.ts';
import { actionsListed } from './actions.ts';
import { breakerOnceAndReady } from './breaker.ts';
import { countJourneys, countPassing } from './count.ts';
import type { JourneyCounts } from './count.ts';
import { dangerFirst } from './danger-first.ts';
import { doneOnlyWhenWell } from './done.ts';
import { doorOnlyWhenCool } from './door.ts';
import { journeysEnd } from './ending.ts';
import { flowOf } from './flow.ts';
import { graphOf } from './graph.ts';
import { heatOnlyWhenSafe } from './heat.ts';
import { sentencesPlain } from './plain.ts';
import { rulesKept } from './rules.ts';
import type { Evidence, Failure, Fault, Property, PropertyId } from './property.ts';
import { searchesOf } from './search.ts';
import type { GuideText } from './sentences.ts';
import { stopsCallAndWarn } from './stops.ts';
import { unsureEverywhere, unsureIsNoAlarm } from './unsure.ts';

const properties: readonly Property[] = [
  dangerFirst,
  heatOnlyWhenSafe,
  breakerOnceAndReady,
  actionsListed,
  journeysEnd,
  stopsCallAndWarn,
  doorOnlyWhenCool,
  sentencesPlain,
  unsureEverywhere,
  unsureIsNoAlarm,
  doneOnlyWhenWell,
  rulesKept,
];

/** A fault and a shortest journey that shows it; empty where no journey leads there. */
export interface CounterExample {
  readonly fault: Fault;
  readonly journey: Journey;
}

export interface Verdict {
  readonly id: PropertyId;
  readonly holds: boolean;
  /** Journeys the verdict speaks for: all of the guide's, unfinished ones too. Null: endless. */
  readonly journeysCovered: bigint | null;
  /** Those of them that pass a node the property speaks about; 0 means it says nothing here. */
  readonly journeysConcerned: bigint | null;
  readonly faults: readonly Fault[];
  /** There whenever the property fails. */
  readonly counterExample?: CounterExample;
}

export interface Proof {
  readonly guide: GuideId;
  readonly holds: boolean;
  readonly journeys: JourneyCounts;
  readonly verdicts: readonly Verdict[];
}

/** Journeys of this many faults are compared for the shortest; each costs its own length. */
const COMPARED = 50;

function shortest(failures: readonly Failure[]): CounterExample | undefined {
  return failures
    .slice(0, COMPARED)
    .map(({ fault, journey }) => ({ fault, journey: journey() ?? [] }))
    .reduce<CounterExample | undefined>(
      (best, next) => (best && best.journey.length <= next.journey.length ? best : next),
      undefined,
    );
}

/**
 * Prove a guide over every journey, in time linear in the guide. Any `Guide` is taken,
 * also one that no loader would let through. Without `text` nothing is said about
 * sentences: `sentences-plain` is left out, and `actions-listed` and
 * `stops-call-and-warn` look at the structure only.
 */
export function prove(guide: Guide, text?: GuideText): Proof {
  const graph = graphOf(guide);
  const counts = countJourneys(graph);
  const evidence: Evidence = {
    graph,
    flow: flowOf(graph),
    searches: searchesOf(graph),
    counts,
    text,
  };
  const verdicts = properties
    .filter(({ needsText }) => text !== undefined || !needsText)
    .map(({ id, concerns, check }): Verdict => {
      const failures = check(evidence);
      const counterExample = shortest(failures);
      const concerned = countPassing(graph, counts.all, (index) => {
        const node = graph.nodes[index];
        return node !== undefined && concerns(node, guide.rules ?? []);
      });
      return {
        id,
        holds: failures.length === 0,
        journeysCovered: counts.all,
        journeysConcerned: concerned,
        faults: failures.map(({ fault }) => fault),
        ...(counterExample ? { counterExample } : {}),
      };
    });
  return {
    guide: guide.id,
    holds: verdicts.every(({ holds }) => holds),
    journeys: counts,
    verdicts,
  };
}
