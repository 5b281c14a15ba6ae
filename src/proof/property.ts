import type { AnswerId, Fact, GuideNode, Journey, NodeId, Rule } from '../guide/types.ts';
import type { JourneyCounts } from './count.ts';
import type { Flow } from './flow.ts';
import type { Graph } from './graph.ts';
import type { Searches } from './search.ts';
import type { GuideText } from './sentences.ts';

/** The properties, by names that stay the same for machines that read the proof. */
export const propertyIds = [
  'danger-first',
  'heat-only-when-safe',
  'breaker-once-and-ready',
  'actions-listed',
  'journeys-end',
  'stops-call-and-warn',
  'door-only-when-cool',
  'sentences-plain',
  'unsure-everywhere',
  'unsure-is-no-alarm',
  'done-only-when-well',
  'rules-kept',
] as const;
export type PropertyId = (typeof propertyIds)[number];

/** What is wrong, where, and the facts of it. */
export type Fault =
  | { readonly code: 'start-missing' | 'start-not-question'; readonly node: NodeId }
  /** The start has no answer `none` that goes on, or no danger answer. */
  | { readonly code: 'none-missing' | 'no-danger-answers'; readonly node: NodeId }
  /** A danger answer does not end at an emergency stop that is for it alone. */
  | { readonly code: 'not-own-stop'; readonly node: NodeId; readonly answer: AnswerId }
  /** A stop is for a danger that is no answer of the start. */
  | { readonly code: 'danger-unasked'; readonly node: NodeId; readonly answer: AnswerId }
  /** The exits of the other pages are not the start's danger answers. */
  | { readonly code: 'exits-differ'; readonly node: NodeId; readonly answers: readonly AnswerId[] }
  /** A step that can heat is reached where this holds, or where this does not. */
  | { readonly code: 'heat-despite' | 'heat-without'; readonly node: NodeId; readonly fact: Fact }
  /** An answer after heat goes on without saying that it is hot again, or that nothing heated. */
  | { readonly code: 'heat-forgotten'; readonly node: NodeId; readonly answer: AnswerId }
  /** One answer here settles a fact, this one goes on and settles neither it nor its contrary. */
  | {
      readonly code: 'doubt-left';
      readonly node: NodeId;
      readonly answer: AnswerId;
      readonly fact: Fact;
    }
  /** An answer raises a flag that has a fact's name, goes on and does not set that fact. */
  | {
      readonly code: 'flag-without-fact';
      readonly node: NodeId;
      readonly answer: AnswerId;
      readonly flag: string;
    }
  /** A step that takes an error's text is reached by answers that tell of no error. */
  | { readonly code: 'error-not-told'; readonly node: NodeId }
  | { readonly code: 'panel-not-ready' | 'breaker-again'; readonly node: NodeId }
  /** After this answer the breaker has to stay off, but it does not end at a stop that says so. */
  | { readonly code: 'breaker-not-left'; readonly node: NodeId; readonly answer: AnswerId }
  | { readonly code: 'action-unlisted'; readonly node: NodeId; readonly action: string }
  | {
      readonly code: 'asks-too-much';
      readonly node: NodeId;
      readonly words: string;
      readonly sentence: string;
    }
  | { readonly code: 'dead-end' | 'end-goes-on' | 'unreachable'; readonly node: NodeId }
  | {
      readonly code: 'leads-nowhere';
      readonly node: NodeId;
      readonly answer: AnswerId;
      readonly target: NodeId;
    }
  | { readonly code: 'loop'; readonly node: NodeId; readonly nodes: readonly NodeId[] }
  | {
      readonly code: 'too-long';
      readonly node: NodeId;
      readonly answers: number;
      readonly most: number;
    }
  | { readonly code: 'nobody-to-call' | 'emergency-not-first'; readonly node: NodeId }
  | { readonly code: 'nothing-warned'; readonly node: NodeId }
  | { readonly code: 'door-while-hot'; readonly node: NodeId }
  | { readonly code: 'sentence-missing'; readonly node: NodeId; readonly key: string }
  | {
      readonly code: 'too-hard';
      readonly node: NodeId;
      readonly grade: number;
      readonly most: number;
    }
  | { readonly code: 'unsure-missing'; readonly node: NodeId }
  /** "I am not sure" raises a flag, or leads to an end that someone must come to soon. */
  | {
      readonly code: 'unsure-flags';
      readonly node: NodeId;
      readonly answer: AnswerId;
      readonly flag: string;
    }
  | {
      readonly code: 'unsure-alarms';
      readonly node: NodeId;
      readonly answer: AnswerId;
      readonly to: NodeId;
    }
  /** A finish says that the range is fine where this held, or has someone come all the same. */
  | { readonly code: 'done-despite'; readonly node: NodeId; readonly fact: Fact }
  | { readonly code: 'done-urgent'; readonly node: NodeId }
  /** The guide's own rules: a page once too often, without an answer, or despite one. */
  | { readonly code: 'page-again'; readonly node: NodeId; readonly most: number }
  | {
      readonly code: 'page-without' | 'page-despite';
      readonly node: NodeId;
      readonly answer: string;
    }
  | {
      readonly code: 'ends-elsewhere';
      readonly node: NodeId;
      readonly answer: AnswerId;
      readonly ends: readonly string[];
    };

/** A fault with the way to show it; the journey is worked out only when asked for. */
export interface Failure {
  readonly fault: Fault;
  readonly journey: () => Journey | undefined;
}

/** All that a property may look at. */
export interface Evidence {
  readonly graph: Graph;
  readonly flow: Flow;
  readonly searches: Searches;
  readonly counts: JourneyCounts;
  readonly text: GuideText | undefined;
}

export interface Property {
  readonly id: PropertyId;
  /** The nodes it speaks about; every journey that passes one of them is concerned. */
  readonly concerns: (node: GuideNode, rules: readonly Rule[]) => boolean;
  /** It says nothing without the guide's sentences. */
  readonly needsText?: boolean;
  readonly check: (evidence: Evidence) => readonly Failure[];
}

/** The nodes some journey reaches, with their indexes. */
export function reached(graph: Graph): { readonly node: GuideNode; readonly index: number }[] {
  return graph.order.flatMap((index) => {
    const node = graph.nodes[index];
    return node ? [{ node, index }] : [];
  });
}

/** A shortest journey to a node, and then this answer of it. */
export function journeyWith(
  { searches }: Evidence,
  index: number,
  at: NodeId,
  answer: AnswerId,
): () => Journey | undefined {
  return () => {
    const journey = searches.plain(index);
    return journey && [...journey, { at, answer }];
  };
}
