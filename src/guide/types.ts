/**
 * The loaded form of a guide, the one thing every other part reads. A guide is
 * a directed acyclic graph of nodes; each node is one page of the site. It is
 * made from `graph.yaml` by `load.ts` and never changed afterwards.
 */
declare const brand: unique symbol;
type Branded<K extends string> = string & { readonly [brand]: K };

/** A guide's name, as in its folder and addresses. Minted by the loader. */
export type GuideId = Branded<'GuideId'>;
/** A node's name inside its guide: unique, and its page's address. */
export type NodeId = Branded<'NodeId'>;
/** The key of a node's sentences and evidence. */
export type TextId = Branded<'TextId'>;
/** An answer's name inside its node. */
export type AnswerId = Branded<'AnswerId'>;

export const nodeKinds = ['question', 'step', 'stop', 'finish'] as const;
export type NodeKind = (typeof nodeKinds)[number];

/** The closed list of things a homeowner may be asked to do. */
export const actions = [
  'look',
  'listen',
  'read-display',
  'read-manual',
  'wait',
  'press-key',
  'set-knob',
  'door-by-hand',
  'breaker',
] as const;
export type Action = (typeof actions)[number];

/** What the proof keeps account of along a journey. */
export const facts = [
  'error-seen',
  'inside-nothing',
  'inside-something',
  'door-forced',
  'door-not-forced',
  'cooled',
  'panel-ready',
  'breaker-tripped',
  'stay-promised',
  'trouble-seen',
] as const;
export type Fact = (typeof facts)[number];

/** ANSI Z535.4 signal words; each panel shows the word, never colour alone. */
export const signals = ['danger', 'warning', 'caution', 'notice'] as const;
export type Signal = (typeof signals)[number];

/** Whom a stop sends the reader to, in the order given. */
export const helpers = [
  'emergency',
  'poison',
  'gas-company',
  'power-company',
  'technician',
] as const;
export type Helper = (typeof helpers)[number];

/** Parts of guides that a firm may switch off in `content/firm.yaml`. */
export const switches = ['short-self-clean'] as const;
export type Switch = (typeof switches)[number];

/** How soon someone must come. */
export const urgencies = ['emergency', 'today', 'soon', 'none'] as const;
export type Urgency = (typeof urgencies)[number];

/** An edge of the graph: an answer, where it leads, and what it means. */
export interface Answer {
  readonly id: AnswerId;
  readonly to: NodeId;
  /** Facts that hold from this answer on. */
  readonly sets: readonly Fact[];
  /** Facts that no longer hold from this answer on. */
  readonly clears: readonly Fact[];
  /** What staff must see first of this answer: an entry of `content/flags.yaml`. */
  readonly flag?: string;
  /** Minutes since the heat stopped that this answer stands for at least. */
  readonly heatEnded?: number;
  /** The homeowner's page asks for a second tap before it goes on. */
  readonly confirm?: true;
  /** File name of its small drawing under `src/site/drawings/answers`, without its ending. */
  readonly drawing?: string;
}

/** A count-down on a page. `minutes` is [earliest, latest]; one fixed length has both equal. */
export interface Timer {
  readonly kind: 'fixed' | 'cooling';
  /** Of a cooling oven: until it can be reached into, not until its door unlocks. */
  readonly reach?: true;
  readonly minutes: readonly [earliest: number, latest: number];
}

/** What working guides and the guides of a codebook say of a node. */
export interface GraphNode {
  readonly id: NodeId;
  /** The guide whose file it stands in. */
  readonly guide: GuideId;
  /** Its name in that file: the same on all tracks, and no other page's. */
  readonly page: string;
  /** The track this copy of the page is on; stops and finishes are on none. */
  readonly track?: string;
  /** Key of its sentences and evidence; pages may borrow another's. */
  readonly sentences: TextId;
  readonly kind: NodeKind;
  /** Stops and finishes only. */
  readonly urgency: Urgency;
  /** In the order shown. Empty exactly for stops and finishes. */
  readonly answers: readonly Answer[];
  /** Steps only: the step can make the oven heat. */
  readonly heat: boolean;
  /** What staff must see first of a journey that ends here. */
  readonly flag?: string;
}

export interface GuideNode extends GraphNode {
  /** The block it was taken from; pages of the guide's own file have none. */
  readonly block?: string;
  /** Steps only: what the reader does. */
  readonly action?: Action;
  /** The signal word of the node's caution box, where it has one. */
  readonly caution?: Signal;
  readonly timer?: Timer;
  /** The page takes the text of the display (an error, as shown). */
  readonly takesError: boolean;
  /** Stops only: whom to call, first one first. */
  readonly call: readonly Helper[];
  /** Finishes only: the range is fine and can be used as usual. */
  readonly done?: true;
  /** Stops only: the range's breaker stays off until someone has been. */
  readonly breakerStaysOff: boolean;
  /** Emergency stops only: the danger answer this stop is for, so that two swapped stops show. */
  readonly danger?: AnswerId;
  /** File name of the line drawing under `src/site/drawings`, without its ending. */
  readonly drawing?: string;
}

/**
 * What a guide promises of itself. Pages are named by their text keys, answers as
 * `page.answer`: all copies of a page on its tracks are meant.
 */
export type Rule =
  /** No journey comes to the page more often than this. */
  | { readonly kind: 'most'; readonly page: string; readonly most: number }
  /** The page comes only in journeys in which the answer was given before. */
  | { readonly kind: 'needs'; readonly page: string; readonly answer: string }
  /** The page never comes after the answer, unless another one was given since. */
  | {
      readonly kind: 'never-after';
      readonly page: string;
      readonly answer: string;
      readonly unless?: string;
    }
  /** The answer leads at once to one of these pages. */
  | { readonly kind: 'ends-at'; readonly answer: string; readonly ends: readonly string[] };

/** What a journey can be traced in: a working guide, or a guide of a codebook. */
export interface Graph<N extends GraphNode = GraphNode> {
  readonly id: GuideId;
  readonly start: NodeId;
  /** In the order of the file; each track's copies after the first track's node. */
  readonly nodes: ReadonlyMap<NodeId, N>;
  /**
   * The danger answers: possible from every question and step, each leading to
   * its own emergency stop. They are the start question's answers that lead to stops,
   * except its `unsure`: every question and step has an `unsure` of its own.
   */
  readonly exits: readonly Answer[];
  /** All flags there are, in the order staff see them: `content/flags.yaml`. */
  readonly flags: readonly string[];
}

export interface Guide extends Graph<GuideNode> {
  /** Of its own file; the first one's copies carry the pages' plain names. */
  readonly tracks: readonly string[];
  /** The switches that change it; absent where none does. */
  readonly switches?: readonly Switch[];
  /** Its own, and in a joined guide those of the guides it hands over to. */
  readonly rules?: readonly Rule[];
}

/** One answer given: at which node, and which. */
export interface Given {
  readonly at: NodeId;
  readonly answer: AnswerId;
}

/** The answers given so far, in order, from the guide's start. */
export type Journey = readonly Given[];
