/**
 * A journey read slowly and by other means than `src/journey/trace.ts`, to compare with it: every
 * question is answered from the answers' list alone, from its end or its start, and nothing is
 * kept from one question to the next.
 */
import type { Answer, Fact, Given, Graph, GraphNode, Journey } from '../../src/guide/types.ts';

type AnyNode = GraphNode;

function nodeNamed(guide: Graph, id: string): AnyNode | undefined {
  for (const node of guide.nodes.values()) if ((node.id as string) === id) return node;
  return undefined;
}

/** All edges that leave a node: an exit that an own answer hides is none. */
function edgesOf(guide: Graph, node: AnyNode): readonly Answer[] {
  if (node.kind === 'stop' || node.kind === 'finish' || node.answers.length === 0) return [];
  if (node.id === guide.start) return node.answers;
  const own = node.answers.map(({ id }) => id);
  return [...node.answers, ...guide.exits.filter(({ id }) => !own.includes(id))];
}

/** Where the first answers lead, by recursion from the last one; undefined where one does not fit. */
function after(guide: Graph, journey: Journey): AnyNode | undefined {
  const last = journey.at(-1);
  if (!last) return nodeNamed(guide, guide.start);
  const edge = edgeOf(guide, journey.slice(0, -1), last);
  return edge && nodeNamed(guide, edge.to);
}

function edgeOf(guide: Graph, before: Journey, { at, answer }: Given): Answer | undefined {
  const here = after(guide, before);
  if (here?.id !== at) return undefined;
  const [edge] = edgesOf(guide, here).filter(({ id }) => id === answer);
  return edge;
}

/** How many of the first answers fit. */
function fitting(guide: Graph, journey: Journey): number {
  let most = 0;
  for (let count = 1; count <= journey.length; count += 1)
    if (most === count - 1 && after(guide, journey.slice(0, count))) most = count;
  return most;
}

/** What `trace` says, in a form that two readers can be compared by. */
export function readSlowly(guide: Graph, journey: Journey) {
  const fits = journey.slice(0, fitting(guide, journey));
  const read = fits.map((given, index) => {
    const edge = edgeOf(guide, fits.slice(0, index), given);
    const node = nodeNamed(guide, given.at);
    if (!edge || !node) throw new Error(`${given.at}.${given.answer}`);
    return { edge, node };
  });
  const end = after(guide, fits);
  if (!end) throw new Error('no end');
  const facts = (fact: Fact): boolean => {
    const telling = read.filter(
      ({ edge }) => edge.sets.includes(fact) || edge.clears.includes(fact),
    );
    return telling.at(-1)?.edge.sets.includes(fact) ?? false;
  };
  const lastHeat = read.findLastIndex(({ node }) => node.heat);
  // A step that heats may itself say how long ago the heat stopped.
  const told = read.slice(Math.max(0, lastHeat)).filter(({ edge }) => edge.heatEnded !== undefined);
  const raised = [...read.flatMap(({ edge }) => edge.flag ?? []), ...(end.flag ? [end.flag] : [])];
  return {
    answers: read.map(({ node, edge }) => `${node.id}.${edge.id}`),
    end: end.id as string,
    rest: journey.slice(fits.length).length,
    state:
      end.answers.length > 0 || end.kind === 'question' || end.kind === 'step' ? 'open' : end.kind,
    facts,
    heatEnded: told.at(-1)?.edge.heatEnded,
    flags: [...guide.flags].filter((flag) => raised.includes(flag)),
    guides: read.map(({ node }) => node.guide as string),
  };
}
