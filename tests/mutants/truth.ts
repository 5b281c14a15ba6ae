/**
 * The properties judged over whole journeys by what the answers mean (`meaning.ts`),
 * whatever a spoiled guide says they mean. A journey's state is everything the reader has told so far, together,
 * where the proof looks at each fact by itself. `everyJourney` spells out every journey;
 * `everyState` visits each page once for each different state, which is the same
 * judgement without the repetitions.
 */
import type { Guide, GuideNode } from '../../src/guide/types.ts';
import type { Meaning } from './meaning.ts';

const bits = {
  stays: 128,
  error: 1,
  inside: 2,
  forced: 4,
  empty: 8,
  gentle: 16,
  cool: 32,
  panel: 64,
  tripped: 256,
  trouble: 512,
} as const;
const BREAKER = 1024;
const SAFE_TO_HEAT = bits.empty | bits.gentle | bits.cool;

interface Edge {
  readonly to: number;
  readonly adds: number;
  readonly takes: number;
}

interface Page {
  readonly node: GuideNode;
  readonly edges: readonly Edge[];
  readonly end: boolean;
  /** What the reader must, and must not, have told before coming here. */
  readonly needs: number;
  readonly forbids: number;
  readonly worksBreaker: boolean;
  readonly touchesDoor: boolean;
}

/** Wrong by the page alone, or by one of its answers, whatever the journey. */
function wrongPage(guide: Guide, node: GuideNode, meaning: Meaning): string[] {
  const { emergencies, leaveOff, unfit } = meaning;
  const wrong: string[] = [];
  const end = node.kind === 'stop' || node.kind === 'finish';
  if (end !== (node.answers.length === 0)) wrong.push('journeys-end');
  if (node.kind === 'stop' && node.call.length === 0) wrong.push('stops-call-and-warn');
  if (emergencies.has(node.sentences) && node.call[0] !== 'emergency')
    wrong.push('stops-call-and-warn');
  if (!end && !node.answers.some(({ id }) => id === 'unsure')) wrong.push('unsure-everywhere');
  for (const { id, to } of node.answers) {
    const there = guide.nodes.get(to);
    const answer = `${node.sentences}.${id}`;
    if (
      leaveOff.has(answer) ? !there?.breakerStaysOff : unfit.has(answer) && there?.kind !== 'stop'
    )
      wrong.push('breaker-once-and-ready');
    const urgency = there?.urgency ?? 'none';
    if (id === 'unsure' && node.id !== guide.start && ['today', 'emergency'].includes(urgency))
      wrong.push('unsure-is-no-alarm');
    if (!guide.nodes.has(to)) wrong.push('journeys-end');
  }
  return wrong;
}

function wrongStart(guide: Guide, { emergencies, ownStop, start: first }: Meaning): boolean {
  const start = guide.nodes.get(guide.start);
  const isOwn = (danger: string, to: GuideNode['id'] | undefined): boolean => {
    const stop = to === undefined ? undefined : guide.nodes.get(to);
    const urgency = emergencies.has(stop?.sentences ?? '') ? 'emergency' : 'today';
    return stop?.sentences === ownStop[danger] && stop?.urgency === urgency;
  };
  const dangers = Object.keys(ownStop);
  const none = start?.answers.find(({ id }) => id === 'none')?.to;
  const next = none === undefined ? undefined : guide.nodes.get(none)?.kind;
  return (
    start?.sentences !== first ||
    !(next === 'question' || next === 'step') ||
    !dangers.every((danger) => isOwn(danger, start.answers.find(({ id }) => id === danger)?.to)) ||
    !dangers
      .filter((danger) => danger !== 'unsure')
      .every((danger) => isOwn(danger, guide.exits.find(({ id }) => id === danger)?.to))
  );
}

/** The guide's pages by number, the start first, with what each answer really tells. */
function pagesOf(guide: Guide, meaning: Meaning): Page[] {
  const {
    told,
    makes,
    saysFine,
    leaveOff,
    unfit,
    heats,
    startsCycle,
    touchesDoor,
    worksBreaker,
    copiesError,
  } = meaning;
  const start = guide.nodes.get(guide.start);
  const nodes = [...guide.nodes.values()].filter((node) => node !== start);
  if (start) nodes.unshift(start);
  const numbers = new Map(nodes.map(({ id }, number) => [id, number]));
  return nodes.map((node) => ({
    node,
    end: node.kind === 'stop' || node.kind === 'finish',
    needs:
      (heats.has(node.sentences) ? SAFE_TO_HEAT : 0) |
      (startsCycle.has(node.sentences) ? bits.stays : 0) |
      (copiesError.has(node.sentences) ? bits.error : 0) |
      (worksBreaker.has(node.sentences) ? bits.panel : 0) |
      (touchesDoor.has(node.sentences) ? bits.cool : 0),
    forbids:
      (heats.has(node.sentences) ? bits.error | bits.inside | bits.forced : 0) |
      (saysFine.has(node.sentences) ? bits.error | bits.forced | bits.tripped | bits.trouble : 0),
    worksBreaker: worksBreaker.has(node.sentences),
    touchesDoor: touchesDoor.has(node.sentences),
    edges: node.answers.map(({ id, to }) => {
      const key = `${node.sentences}.${id}`;
      const all = [...(told[key] ?? []), ...(makes[key] ?? [])];
      return {
        to: numbers.get(to) ?? -1,
        adds: all.reduce((sum, one) => sum | bits[one], 0),
        takes:
          (heats.has(node.sentences) ? bits.cool : 0) |
          (leaveOff.has(key) || unfit.has(key) ? bits.panel : 0),
      };
    }),
  }));
}

/** What is wrong with coming to a page in a state. */
function wrongHere(page: Page, state: number): string | undefined {
  const wrong = (state & page.needs) !== page.needs || (state & page.forbids) !== 0;
  if (page.worksBreaker)
    return wrong || state >= 2 * BREAKER ? 'breaker-once-and-ready' : undefined;
  if (!wrong) return undefined;
  if (page.end) return 'done-only-when-well';
  return page.touchesDoor ? 'door-only-when-cool' : 'heat-only-when-safe';
}

function after(state: number, page: Page, edge: Edge): number {
  const passed = page.worksBreaker ? BREAKER : 0;
  return ((state & ~edge.takes) | edge.adds) + passed;
}

/** The longest way on from a page, Infinity round a loop. Recursive: for small guides. */
function longest(pages: readonly Page[], from: number, open: Set<number>, known: number[]): number {
  const before = known[from];
  if (before !== undefined) return before;
  if (open.has(from)) return Infinity;
  open.add(from);
  const edges = pages[from]?.edges ?? [];
  const most = edges.map(({ to }) => (to < 0 ? 0 : 1 + longest(pages, to, open, known)));
  open.delete(from);
  return (known[from] = Math.max(0, ...most));
}

/** Properties broken by some journey, each journey's state told apart in full. */
export function everyState(
  guide: Guide,
  meaning: Meaning,
): { broken: ReadonlySet<string>; states: number } {
  const pages = pagesOf(guide, meaning);
  const broken = new Set(pages.flatMap(({ node }) => wrongPage(guide, node, meaning)));
  if (wrongStart(guide, meaning)) broken.add('danger-first');
  if (longest(pages, 0, new Set(), []) > 25) broken.add('journeys-end');
  const seen = pages.map(() => new Set<number>());
  const todo: [number, number][] = [[0, 0]];
  let states = 0;
  for (let next = todo.pop(); next; next = todo.pop()) {
    const [number, state] = next;
    const page = pages[number];
    if (!page || seen[number]?.has(state)) continue;
    seen[number]?.add(state);
    states += 1;
    const wrong = wrongHere(page, state);
    if (wrong !== undefined) broken.add(wrong);
    // More than three breaker steps are no more wrong than three, and loops must end.
    for (const edge of page.edges)
      if (edge.to >= 0) todo.push([edge.to, Math.min(after(state, page, edge), 4 * BREAKER - 1)]);
  }
  if (seen.some(({ size }) => size === 0)) broken.add('journeys-end');
  return { broken, states };
}

/** The same judgement, and the counts, over every journey one by one. For guides without loops. */
export function everyJourney(
  guide: Guide,
  meaning: Meaning,
): {
  broken: ReadonlySet<string>;
  all: number;
  complete: number;
  longest: number;
} {
  const pages = pagesOf(guide, meaning);
  const broken = new Set(pages.flatMap(({ node }) => wrongPage(guide, node, meaning)));
  if (wrongStart(guide, meaning)) broken.add('danger-first');
  const exits = guide.exits.length;
  let [all, complete, most] = [0, 0, 0];

  function visit(number: number, state: number, answers: number): void {
    const page = pages[number];
    if (!page) return;
    all += 1;
    if (answers > most) most = answers;
    const wrong = wrongHere(page, state);
    if (wrong !== undefined) broken.add(wrong);
    if (page.end) {
      complete += 1;
      return;
    }
    // The exits end at once at stops, which `wrongStart` has looked at; at the start they
    // are its own answers.
    if (number > 0) {
      all += exits;
      complete += exits;
    }
    for (const edge of page.edges) visit(edge.to, after(state, page, edge), answers + 1);
  }
  visit(0, 0, 0);
  if (most > 25) broken.add('journeys-end');
  return { broken, all, complete, longest: most };
}
