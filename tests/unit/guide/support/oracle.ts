/**
 * A second opinion on a guide: every journey spelled out one by one, and each property
 * looked up in the journey itself by going back through the answers given. It shares no
 * code and no method with the proof, only the types. Slow on purpose; for small guides.
 */
import type { Answer, Fact, Guide, GuideNode, Journey } from '../../../../src/guide/types.ts';

interface Said {
  readonly node: GuideNode;
  readonly answer: Answer;
}

export interface Opinion {
  /** Names of the properties that some journey breaks. */
  readonly broken: ReadonlySet<string>;
  /** A journey came back to a node it had passed; it was not followed round. */
  readonly loops: boolean;
  readonly all: number;
  readonly complete: number;
  readonly shortest: number;
  readonly longest: number;
  /** Journeys that pass a step that heats, a breaker step, a step at the door. */
  readonly passing: { readonly heat: number; readonly breaker: number; readonly door: number };
}

/** The closed list of actions, from the house plan. */
const listed = new Set(
  'look listen read-display read-manual wait press-key set-knob door-by-hand breaker'.split(' '),
);

/** Was this ever told? What was seen once stays seen. */
function ever(journey: readonly Said[], fact: Fact): boolean {
  return journey.some(({ answer }) => answer.sets.includes(fact));
}

/** Is this so now, by the last answer that says something about it? */
function now(journey: readonly Said[], fact: Fact): boolean {
  const last = journey.findLast(
    ({ node, answer }) =>
      answer.sets.includes(fact) ||
      answer.clears.includes(fact) ||
      (fact === 'cooled' && node.heat),
  );
  return last?.answer.sets.includes(fact) ?? false;
}

function isEnd(node: GuideNode | undefined): boolean {
  return node?.kind === 'stop' || node?.kind === 'finish';
}

/** What is wrong with the last answer of a journey, by itself. */
function* wrongAnswer(guide: Guide, { node, answer }: Said): Generator<string> {
  const there = guide.nodes.get(answer.to);
  const own = node.answers.includes(answer);
  if (!there) yield 'journeys-end';
  const off = there?.breakerStaysOff ?? false;
  const tripped = answer.sets.includes('breaker-tripped');
  const unfit = answer.clears.includes('panel-ready');
  if (own && (tripped ? !off : unfit && there?.kind !== 'stop')) yield 'breaker-once-and-ready';
  const calls = there?.urgency === 'today' || there?.urgency === 'emergency';
  const alarm = answer.flag !== undefined || (calls && node.id !== guide.start);
  if (own && answer.id === 'unsure' && alarm) yield 'unsure-is-no-alarm';
  if (!own || isEnd(there)) return;
  const settles = (a: Fact, b: Fact): boolean =>
    answer.sets.includes(a) ? !answer.sets.includes(b) : answer.sets.includes(b);
  const asks = (fact: Fact): boolean => node.answers.some(({ sets }) => sets.includes(fact));
  if (asks('inside-nothing') && !settles('inside-nothing', 'inside-something'))
    yield 'heat-only-when-safe';
  if (asks('door-not-forced') && !settles('door-not-forced', 'door-forced'))
    yield 'heat-only-when-safe';
  // What staff are told by a flag of a fact's name, the guide keeps account of, too.
  const noted = answer.sets.map(String);
  if (['error-seen', 'door-forced'].some((flag) => answer.flag === flag && !noted.includes(flag)))
    yield 'heat-only-when-safe';
  const says = [answer.sets, answer.clears].filter((facts) => facts.includes('cooled'));
  if (node.heat && says.length !== 1) yield 'heat-only-when-safe';
}

/** What is wrong with having come here by this journey. */
function* wrongHere(journey: readonly Said[], here: GuideNode): Generator<string> {
  if (here.heat) {
    const unsafe = ['error-seen', 'inside-something', 'door-forced'] as const;
    const needed = ['inside-nothing', 'door-not-forced', 'cooled'] as const;
    if (unsafe.some((fact) => ever(journey, fact))) yield 'heat-only-when-safe';
    if (!needed.every((fact) => now(journey, fact))) yield 'heat-only-when-safe';
    if (here.action === 'press-key' && !now(journey, 'stay-promised')) yield 'heat-only-when-safe';
  }
  if (here.kind === 'step' && here.takesError && !ever(journey, 'error-seen'))
    yield 'heat-only-when-safe';
  if (here.action === 'breaker') {
    const before = journey.filter(({ node }) => node.action === 'breaker').length;
    if (before >= 2 || !now(journey, 'panel-ready')) yield 'breaker-once-and-ready';
  }
  if (here.action === 'door-by-hand' && !now(journey, 'cooled')) yield 'door-only-when-cool';
  if (here.kind === 'step' && !listed.has(String(here.action))) yield 'actions-listed';
  if (isEnd(here) !== (here.answers.length === 0)) yield 'journeys-end';
  if (here.kind === 'stop' && here.call.length === 0) yield 'stops-call-and-warn';
  if (here.kind === 'stop' && here.urgency === 'emergency' && here.call[0] !== 'emergency')
    yield 'stops-call-and-warn';
  const trouble = ['error-seen', 'door-forced', 'breaker-tripped', 'trouble-seen'] as const;
  if (here.done && (here.urgency !== 'none' || trouble.some((fact) => ever(journey, fact))))
    yield 'done-only-when-well';
  if (!isEnd(here) && !here.answers.some(({ id }) => id === 'unsure')) yield 'unsure-everywhere';
}

/** Which of the guide's own rules a journey has broken by coming here. */
function* wrongByRule(guide: Guide, journey: readonly Said[], here: GuideNode): Generator<string> {
  const given = journey.map(({ node, answer }) => `${node.sentences}.${answer.id}`);
  const passed = [...journey.map(({ node }) => node.sentences), here.sentences].map(String);
  for (const rule of guide.rules ?? []) {
    const comes = 'page' in rule && here.sentences === rule.page;
    const wrong =
      rule.kind === 'ends-at'
        ? given.at(-1) === rule.answer && !rule.ends.includes(here.sentences)
        : rule.kind === 'most'
          ? passed.filter((text) => text === rule.page).length > rule.most
          : rule.kind === 'needs'
            ? comes && !given.includes(rule.answer)
            : comes &&
              given.includes(rule.answer) &&
              !given.slice(given.lastIndexOf(rule.answer) + 1).includes(rule.unless ?? '');
    if (wrong) yield 'rules-kept';
  }
}

/** What is wrong with the first page and the danger list. */
function* wrongStart(guide: Guide): Generator<string> {
  const start = guide.nodes.get(guide.start);
  if (start?.kind !== 'question') {
    yield 'danger-first';
    return;
  }
  const stops = start.answers.filter(({ id }) => id !== 'none');
  for (const { id, to } of stops) {
    const stop = guide.nodes.get(to);
    const wanted = stop?.call[0] === 'emergency' ? 'emergency' : 'today';
    const own = stop?.kind === 'stop' && stop.danger === id && stop.urgency === wanted;
    if (!own || stop.answers.length > 0) yield 'danger-first';
  }
  const none = start.answers.find(({ id }) => id === 'none');
  if (!none || isEnd(guide.nodes.get(none.to))) yield 'danger-first';
  const asked = stops.map(({ id }) => id);
  for (const { danger } of guide.nodes.values())
    if (danger !== undefined && !asked.includes(danger)) yield 'danger-first';
  const dangers = stops.filter(({ id }) => id !== 'unsure').map(({ id, to }) => `${id} ${to}`);
  const exits = guide.exits.map(({ id, to }) => `${id} ${to}`);
  if (dangers.length === 0 || dangers.toSorted().join() !== exits.toSorted().join())
    yield 'danger-first';
}

/** Go through every journey of a guide. */
export function oracle(guide: Guide): Opinion {
  const broken = new Set<string>(wrongStart(guide));
  const seen = new Set<GuideNode>();
  let [loops, all, complete, shortest, longest] = [false, 0, 0, Infinity, -Infinity];
  const passing = { heat: 0, breaker: 0, door: 0 };

  function visit(journey: readonly Said[], here: GuideNode): void {
    all += 1;
    seen.add(here);
    const passed = [...journey.map(({ node }) => node), here];
    if (passed.some(({ heat }) => heat)) passing.heat += 1;
    if (passed.some(({ action }) => action === 'breaker')) passing.breaker += 1;
    if (passed.some(({ action }) => action === 'door-by-hand')) passing.door += 1;
    for (const name of wrongHere(journey, here)) broken.add(name);
    for (const name of wrongByRule(guide, journey, here)) broken.add(name);
    if (isEnd(here)) {
      complete += 1;
      shortest = Math.min(shortest, journey.length);
      longest = Math.max(longest, journey.length);
      if (journey.length > 25) broken.add('journeys-end');
    }
    if (here.answers.length === 0) return;
    const own = new Set(here.answers.map(({ id }) => id));
    for (const answer of [...here.answers, ...guide.exits.filter(({ id }) => !own.has(id))]) {
      const said = { node: here, answer };
      for (const name of wrongAnswer(guide, said)) broken.add(name);
      const next = guide.nodes.get(answer.to);
      if (next && passed.includes(next)) loops = true;
      else if (next) visit([...journey, said], next);
    }
  }

  const start = guide.nodes.get(guide.start);
  if (start) visit([], start);
  if (loops || [...guide.nodes.values()].some((node) => !seen.has(node)))
    broken.add('journeys-end');
  return { broken, loops, all, complete, shortest, longest, passing };
}

/** The properties one journey breaks on its way, `danger-first` left out; undefined if it is none. */
export function brokenAlong(guide: Guide, journey: Journey): ReadonlySet<string> | undefined {
  const broken = new Set<string>();
  const said: Said[] = [];
  let here = guide.nodes.get(guide.start);
  for (const { at, answer: id } of journey) {
    if (here?.id !== at) return undefined;
    for (const name of wrongHere(said, here)) broken.add(name);
    for (const name of wrongByRule(guide, said, here)) broken.add(name);
    const same = (answer: Answer): boolean => answer.id === id;
    const answer = here.answers.find(same) ?? guide.exits.find(same);
    if (!answer) return undefined;
    for (const name of wrongAnswer(guide, { node: here, answer })) broken.add(name);
    said.push({ node: here, answer });
    here = guide.nodes.get(answer.to);
    if (said.some(({ node }) => node === here)) broken.add('journeys-end');
  }
  if (here) for (const name of wrongHere(said, here)) broken.add(name);
  if (here) for (const name of wrongByRule(guide, said, here)) broken.add(name);
  return broken;
}
