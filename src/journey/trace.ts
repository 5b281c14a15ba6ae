/** The one reader of a journey: what the answers given so far mean in a guide or a codebook. */
import type { Answer, Fact, Graph, GraphNode, GuideId, Journey } from '../guide/types.ts';

/** One answer given, with the node it was given at. */
export interface Step<N extends GraphNode = GraphNode> {
  readonly node: N;
  readonly edge: Answer;
}

/** A journey's answers in one guide, in order. */
export interface Leg<N extends GraphNode = GraphNode> {
  readonly guide: GuideId;
  readonly steps: readonly Step<N>[];
}

/** How a journey stands: ended at a stop, ended well, or not ended yet. */
export type State = 'stop' | 'finish' | 'open';

export interface Trace<N extends GraphNode = GraphNode> {
  readonly steps: readonly Step<N>[];
  /** Where the journey stands: the next question or step, a stop, or a finish. */
  readonly end: N;
  /** What does not fit from there on; empty for a journey of this guide. */
  readonly rest: Journey;
  readonly state: State;
  readonly facts: ReadonlySet<Fact>;
  /** Minutes since the heat stopped, at least; undefined where no answer tells. */
  readonly heatEnded: number | undefined;
  /** Each once, in the order staff see them. */
  readonly flags: readonly string[];
  /** By the guides it came through, which hand over and never lead back. */
  readonly legs: readonly Leg<N>[];
}

/**
 * The answer of a node by its name: its own, or an exit to a danger's stop. An end has none, and
 * the start has the dangers among its own.
 */
export function edgeAt(
  { exits }: Pick<Graph, 'exits'>,
  { answers }: Pick<GraphNode, 'answers'>,
  answer: string,
): Answer | undefined {
  const named = ({ id }: Answer): boolean => id === answer;
  const own = answers.find(named);
  return own ?? (answers.length > 0 ? exits.find(named) : undefined);
}

/**
 * Minutes since the heat stopped, at least, after one more answer: as it tells itself. A step that
 * can heat makes what was told before it worthless.
 */
export function heatAfter(before: number | undefined, { node, edge }: Step): number | undefined {
  return edge.heatEnded ?? (node.heat ? undefined : before);
}

function factsOf(steps: readonly Step[]): Set<Fact> {
  const facts = new Set<Fact>();
  for (const { edge } of steps) {
    for (const fact of edge.clears) facts.delete(fact);
    for (const fact of edge.sets) facts.add(fact);
  }
  return facts;
}

function legsOf<N extends GraphNode>(steps: readonly Step<N>[]): Leg<N>[] {
  const legs = new Map<GuideId, Step<N>[]>();
  for (const step of steps) {
    const leg = legs.get(step.node.guide);
    if (leg) leg.push(step);
    else legs.set(step.node.guide, [step]);
  }
  return [...legs].map(([guide, list]) => ({ guide, steps: list }));
}

/**
 * Follow a journey from the guide's start as far as it fits and say what it means. Linear in the
 * journey. Throws RangeError for a graph without its start, which no loader returns.
 */
export function trace<N extends GraphNode>(guide: Graph<N>, journey: Journey): Trace<N> {
  const start = guide.nodes.get(guide.start);
  if (!start) throw new RangeError(guide.start);
  const steps: Step<N>[] = [];
  let end = start;
  for (const { at, answer } of journey) {
    const edge = at === end.id ? edgeAt(guide, end, answer) : undefined;
    const to = edge && guide.nodes.get(edge.to);
    if (!to) break;
    steps.push({ node: end, edge });
    end = to;
  }
  const raised = new Set([...steps.map(({ edge }) => edge.flag), end.flag]);
  return {
    steps,
    end,
    rest: journey.slice(steps.length),
    state: end.kind === 'stop' || end.kind === 'finish' ? end.kind : 'open',
    facts: factsOf(steps),
    heatEnded: steps.reduce<number | undefined>(heatAfter, undefined),
    flags: guide.flags.filter((flag) => raised.has(flag)),
    legs: legsOf(steps),
  };
}

/**
 * The questions and steps that a journey did not come past, each once by its sentences: of the
 * guide it began in and those it came through or stands in.
 */
export function notAsked<N extends GraphNode>(
  guide: Graph<N>,
  { steps, legs }: Pick<Trace<N>, 'steps' | 'legs'>,
): N[] {
  const seen = new Set(steps.map(({ node }) => node.sentences));
  const through = new Set([guide.id, ...legs.map((leg) => leg.guide)]);
  return [...guide.nodes.values()].filter((node) => {
    if (node.answers.length === 0 || seen.has(node.sentences) || !through.has(node.guide))
      return false;
    seen.add(node.sentences);
    return true;
  });
}
