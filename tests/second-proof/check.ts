/**
 * The properties once more, written from their sentences (`src/content/proof-words.ts`, and
 * DEVELOPERS.md for what a rule says), over every state a reader can be in: a page, all that was
 * told, and how often the breaker was worked. `src/proof` follows each fact by itself instead.
 */
import type { FileRule, Machine, Place } from './machine.ts';

/** What an answer can never unsay. */
const LASTING = [
  ...['error-seen', 'inside-something', 'door-forced', 'breaker-tripped', 'trouble-seen'],
];
const FACTS = [
  ...LASTING,
  ...['inside-nothing', 'door-not-forced', 'cooled', 'panel-ready', 'stay-promised'],
];
const ACTIONS = [
  ...['look', 'listen', 'read-display', 'read-manual', 'wait', 'press-key', 'set-knob'],
  ...['door-by-hand', 'breaker'],
];
const MOST_ANSWERS = 25;
/** Above the facts: how often the breaker was worked, 0 to 3. */
export const BREAKER = 1 << FACTS.length;

export const bits = (facts: readonly string[]): number =>
  facts.reduce((sum, fact) => sum | (1 << FACTS.indexOf(fact)), 0);

/** What must have been told, and must not, before a reader comes to a page; by property. */
export function conditions(place: Place): { property: string; needs: number; forbids: number }[] {
  const { heat, action, done } = place;
  const stay = action === 'press-key' ? ['stay-promised'] : [];
  const heats = ['inside-nothing', 'door-not-forced', 'cooled', ...stay];
  const unsafe = ['error-seen', 'inside-something', 'door-forced'];
  const unwell = ['error-seen', 'door-forced', 'breaker-tripped', 'trouble-seen'];
  const copies = place.kind === 'step' && place['takes-error'];
  const condition = (property: string, needs: string[], forbids: string[], more = 0) => ({
    ...{ property, needs: bits(needs), forbids: bits(forbids) | more },
  });
  return [
    ...(heat ? [condition('heat-only-when-safe', heats, unsafe)] : []),
    ...(copies ? [condition('heat-only-when-safe', ['error-seen'], [])] : []),
    ...(action === 'door-by-hand' ? [condition('door-only-when-cool', ['cooled'], [])] : []),
    ...(done ? [condition('done-only-when-well', [], unwell)] : []),
    // Off once and on once: twice or three times before this one is too often.
    ...(action === 'breaker'
      ? [condition('breaker-once-and-ready', ['panel-ready'], [], 2 * BREAKER)]
      : []),
  ];
}

/** What an answer of a page takes from, and adds to, what was told. */
export function effect(place: Place, { sets, clears }: Place['arcs'][number]) {
  const cleared = clears.filter((fact) => !LASTING.includes(fact));
  return { takes: bits([...cleared, ...(place.heat ? ['cooled'] : [])]), adds: bits(sets) };
}

/** All states from the start, one by one: what `visit` is told of, once each. */
function walk(
  { places }: Machine,
  next: (state: number, place: Place, arc: Place['arcs'][number]) => number,
  visit: (place: Place, state: number) => void,
): number {
  const seen = places.map(() => new Set<number>());
  const todo: [number, number][] = [[0, 0]];
  let count = 0;
  for (let one = todo.pop(); one; one = todo.pop()) {
    const [number, state] = one;
    const place = places[number];
    if (!place || seen[number]?.has(state)) continue;
    seen[number]?.add(state);
    count += 1;
    visit(place, state);
    for (const arc of place.arcs) todo.push([arc.to, next(state, place, arc)]);
  }
  return count;
}

/** Properties that a page breaks by itself or by where its answers lead. */
function wrongPage({ places }: Machine, place: Place): string[] {
  const { kind, end, arcs, own, call = [], urgency, action = '', heat } = place;
  const start = places[0] === place;
  const answers = arcs.slice(0, own);
  const asks = (fact: string) => answers.some(({ sets }) => sets.includes(fact));
  const wrong: (string | false | undefined)[] = [
    end !== (arcs.length === 0) && 'journeys-end',
    kind === 'stop' && call.length === 0 && 'stops-call-and-warn',
    kind === 'stop' && urgency === 'emergency' && call[0] !== 'emergency' && 'stops-call-and-warn',
    kind === 'step' && !ACTIONS.includes(action) && 'actions-listed',
    place.done && urgency !== 'none' && 'done-only-when-well',
    !end && answers.every(({ answer }) => answer !== 'unsure') && 'unsure-everywhere',
  ];
  for (const { answer, to, sets, clears, flag = '' } of answers) {
    const there = places[to];
    const soon = there?.urgency === 'today' || there?.urgency === 'emergency';
    const unsure = answer === 'unsure';
    const both = (one: string, other: string) => sets.includes(one) === sets.includes(other);
    const goesOn = !there?.end;
    wrong.push(
      !there && 'journeys-end',
      unsure && (flag !== '' || (soon && !start)) && 'unsure-is-no-alarm',
      (sets.includes('breaker-tripped')
        ? !there?.['breaker-stays-off']
        : clears.includes('panel-ready') && there?.kind !== 'stop') && 'breaker-once-and-ready',
      goesOn &&
        ((heat === true && sets.includes('cooled') === clears.includes('cooled')) ||
          (FACTS.includes(flag) && !sets.includes(flag)) ||
          (asks('inside-nothing') && both('inside-nothing', 'inside-something')) ||
          (asks('door-not-forced') && both('door-not-forced', 'door-forced'))) &&
        'heat-only-when-safe',
    );
  }
  return wrong.filter((one) => typeof one === 'string');
}

function dangerFirst({ places }: Machine): boolean {
  const [start] = places;
  const answers = start?.arcs.slice(0, start.own) ?? [];
  const none = answers.find(({ answer }) => answer === 'none');
  const dangers = answers.filter((one) => one !== none);
  const asked = new Set(dangers.map(({ answer }) => answer));
  return (
    start?.kind === 'question' &&
    places[none?.to ?? -1]?.end === false &&
    dangers.some(({ answer }) => answer !== 'unsure') &&
    dangers.every(({ answer, to }) => {
      const stop = places[to];
      const urgency = stop?.call?.[0] === 'emergency' ? 'emergency' : 'today';
      return stop?.kind === 'stop' && stop.danger === answer && stop.urgency === urgency;
    }) &&
    places.every(({ danger }) => danger === undefined || asked.has(danger))
  );
}

/** Whether some journey breaks a rule. */
function breaks(machine: Machine, rule: FileRule): boolean {
  const { page, answer, most, needs, 'never-after': despite, unless, 'ends-at': ends } = rule;
  if (ends)
    return machine.places.some(({ name, arcs }) =>
      arcs.some(
        (arc) =>
          `${name}.${arc.answer}` === answer &&
          arc.to >= 0 &&
          !ends.includes(machine.places[arc.to]?.name ?? ''),
      ),
    );
  let broken = false;
  walk(
    machine,
    (state, { name }, arc) => {
      if (most !== undefined) return Math.min(most, state + (name === page ? 1 : 0));
      const given = `${name}.${arc.answer}`;
      return given === (needs ?? despite) ? 1 : given === unless ? 0 : state;
    },
    ({ name }, state) => {
      const wrong = most === undefined ? state === (needs === undefined ? 1 : 0) : state >= most;
      if (name === page && wrong) broken = true;
    },
  );
  return broken;
}

export interface Checked {
  readonly broken: ReadonlySet<string>;
  readonly states: number;
  /** Journeys, unfinished ones too, and those to an end; the answers of the longest. Endless: null. */
  readonly journeys: {
    readonly all: bigint;
    readonly complete: bigint;
    readonly longest: number;
  } | null;
}

/** Journeys from each page on, each page once; null round a loop. */
function journeysOf({ places }: Machine): Checked['journeys'] {
  const known = new Map<number, Checked['journeys']>();
  const from = (number: number): Checked['journeys'] => {
    const before = known.get(number);
    if (before !== undefined) return before;
    known.set(number, null);
    const { end, arcs } = places[number] ?? { end: false, arcs: [] };
    let [all, complete, longest] = [1n, end ? 1n : 0n, 0];
    for (const { to } of arcs.filter((arc) => arc.to >= 0)) {
      const on = from(to);
      if (!on) return null;
      [all, complete, longest] = [
        ...([all + on.all, complete + on.complete, Math.max(longest, on.longest + 1)] as const),
      ];
    }
    known.set(number, { all, complete, longest });
    return { all, complete, longest };
  };
  return from(0);
}

/** All that a machine breaks, and its counts. */
export function check(machine: Machine): Checked {
  const broken = new Set(machine.places.flatMap((place) => wrongPage(machine, place)));
  if (!dangerFirst(machine)) broken.add('danger-first');
  const journeys = journeysOf(machine);
  if (!journeys || journeys.longest > MOST_ANSWERS) broken.add('journeys-end');
  if (machine.rules.some((rule) => breaks(machine, rule))) broken.add('rules-kept');
  const states = walk(
    machine,
    (state, place, arc) => {
      const { takes, adds } = effect(place, arc);
      const worked = place.action === 'breaker' && state < 3 * BREAKER ? BREAKER : 0;
      return ((state & ~takes) | adds) + worked;
    },
    (place, state) => {
      for (const { property, needs, forbids } of conditions(place))
        if ((state & needs) !== needs || (state & forbids) !== 0) broken.add(property);
    },
  );
  return { broken, states, journeys };
}
