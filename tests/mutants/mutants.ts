/**
 * Every way to spoil a guide by one slip, in its authors' form: the file is
 * read as plain values, one thing is changed, and it is written again.
 */
import { parse } from 'yaml';
import { actions } from '../../src/guide/types.ts';

type ByTrack = string | Record<string, string>;

interface RawAnswer {
  to: ByTrack;
  track?: ByTrack;
  sets?: string[];
  clears?: string[];
}

interface RawNode {
  kind: string;
  answers?: Record<string, RawAnswer>;
  action?: string;
  heat?: boolean;
  only?: string;
  call?: string[];
  urgency?: string;
  danger?: string;
  'breaker-stays-off'?: boolean;
  'takes-error'?: boolean;
}

interface RawGuide {
  nodes: Record<string, RawNode>;
}

export interface Mutant {
  /** The kind of slip. */
  readonly slip: string;
  /** Which one, for the message of a failing test. */
  readonly name: string;
  /** The text of the spoiled file, written when it is asked for. */
  readonly source: () => string;
}

type Change = (guide: RawGuide) => void;

/** One change for each answer, given the answer itself to change. */
function eachAnswer(
  guide: RawGuide,
  change: (answer: RawAnswer) => readonly [string, (a: RawAnswer) => void][],
): [string, Change][] {
  return Object.entries(guide.nodes).flatMap(([at, node]) =>
    Object.entries(node.answers ?? {}).flatMap(([id, answer]) =>
      change(answer).map(([name, apply]): [string, Change] => [
        `${at}.${id} ${name}`,
        ({ nodes }) => {
          const target = nodes[at]?.answers?.[id];
          if (target) apply(target);
        },
      ]),
    ),
  );
}

function eachNode(
  guide: RawGuide,
  change: (node: RawNode) => readonly [string, (n: RawNode) => void][],
): [string, Change][] {
  return Object.entries(guide.nodes).flatMap(([at, node]) =>
    change(node).map(([name, apply]): [string, Change] => [
      `${at} ${name}`,
      ({ nodes }) => {
        const target = nodes[at];
        if (target) apply(target);
      },
    ]),
  );
}

/** Every pair of answers of a node with their targets, and tracks, swapped. */
function swaps(node: RawNode): [string, (n: RawNode) => void][] {
  const ids = Object.keys(node.answers ?? {});
  return ids.flatMap((one, index) =>
    ids.slice(index + 1).map((other): [string, (n: RawNode) => void] => [
      `${one} ↔ ${other}`,
      ({ answers }) => {
        const [a, b] = [answers?.[one], answers?.[other]];
        if (!a || !b) return;
        const { to, track } = a;
        [a.to, b.to] = [b.to, to];
        if (b.track === undefined) delete a.track;
        else a.track = b.track;
        if (track === undefined) delete b.track;
        else b.track = track;
      },
    ]),
  );
}

/** Drop a node and lead all that led to it on by one of its answers. */
function drops(guide: RawGuide): [string, Change][] {
  return Object.entries(guide.nodes).flatMap(([at, node]) =>
    Object.entries(node.answers ?? {}).map(([id, { to: on }]): [string, Change] => [
      `${at}, on by ${id}`,
      (copy) => {
        const { nodes } = copy;
        Reflect.deleteProperty(nodes, at);
        const rewired = (to: string, track: string): ByTrack =>
          to !== at ? to : typeof on === 'string' ? on : (on[track] ?? on);
        for (const other of Object.values(nodes))
          for (const answer of Object.values(other.answers ?? {}))
            answer.to =
              typeof answer.to === 'string'
                ? answer.to === at
                  ? on
                  : answer.to
                : Object.fromEntries(
                    Object.entries(answer.to).flatMap(([track, to]) => {
                      const next = rewired(to, track);
                      return typeof next === 'string' ? [[track, next]] : [];
                    }),
                  );
      },
    ]),
  );
}

/** The nodes of other guides that this one hands over to. */
function handOvers(guide: RawGuide): string[] {
  const targets = Object.values(guide.nodes)
    .flatMap(({ answers = {} }) => Object.values(answers))
    .flatMap(({ to }) => (typeof to === 'string' ? [to] : Object.values(to)));
  return [...new Set(targets.filter((target) => target.includes('/')))];
}

/** Every answer led to every other node, on all tracks or on one, and into other guides. */
function retargets(guide: RawGuide): [string, Change][] {
  const names = [...Object.keys(guide.nodes), ...handOvers(guide)];
  return eachAnswer(guide, ({ to }) =>
    names.flatMap((name): [string, (a: RawAnswer) => void][] => {
      const whole: [string, (a: RawAnswer) => void][] =
        to === name ? [] : [[`→ ${name}`, (answer) => (answer.to = name)]];
      if (typeof to === 'string') return whole;
      const onTracks = Object.keys(to)
        .filter((track) => to[track] !== name)
        .map((track): [string, (a: RawAnswer) => void] => [
          `→ ${name} on ${track}`,
          (answer) => (answer.to = { ...to, [track]: name }),
        ]);
      return [...whole, ...onTracks];
    }),
  );
}

/** Lists with one member left out, and in each order of first member. */
function shorter<T>(list: readonly T[]): T[][] {
  return list.map((_, index) => list.toSpliced(index, 1));
}

/** All mutants of a guide's file, by kind of slip. */
export function mutantsOf(source: string): Mutant[] {
  const guide = parse(source) as RawGuide;
  const kinds: Record<string, [string, Change][]> = {
    'retarget an answer': retargets(guide),
    'swap two answers': eachNode(guide, swaps),
    'drop a node and rewire': drops(guide),
    'drop an answer': eachNode(guide, ({ answers = {} }) =>
      Object.keys(answers).map((id) => [
        `without ${id}`,
        (n) => void Reflect.deleteProperty(n.answers ?? {}, id),
      ]),
    ),
    'drop a fact that is set': eachAnswer(guide, ({ sets = [] }) =>
      shorter(sets).map((left) => [`sets [${left.join()}]`, (a) => (a.sets = left)]),
    ),
    'drop a fact that is cleared': eachAnswer(guide, ({ clears = [] }) =>
      shorter(clears).map((left) => [`clears [${left.join()}]`, (a) => (a.clears = left)]),
    ),
    'stay on the track': eachAnswer(guide, ({ track }) =>
      track === undefined ? [] : [['stays on its track', (a) => delete a.track]],
    ),
    'forget what was answered': eachAnswer(guide, ({ track, sets, clears }) =>
      track === undefined && !sets && !clears
        ? []
        : [
            [
              'tells nothing',
              (a) => {
                delete a.track;
                delete a.sets;
                delete a.clears;
              },
            ],
          ],
    ),
    'open a node to all tracks': eachNode(guide, ({ only }) =>
      only === undefined ? [] : [['for all', (n) => delete n.only]],
    ),
    'mark or unmark heat': eachNode(guide, ({ kind, heat }) =>
      kind === 'step' ? [[heat ? 'no heat' : 'heat', (n) => (n.heat = !heat)]] : [],
    ),
    'change an action': eachNode(guide, ({ action }) =>
      actions
        .filter((other) => action !== undefined && other !== action)
        .map((other) => [`action ${other}`, (n) => (n.action = other)]),
    ),
    'change whom to call': eachNode(guide, ({ call = [] }) =>
      [...shorter(call), ...(call.length > 1 ? [call.toReversed()] : [])].map((other) => [
        `call [${other.join()}]`,
        (n) => (n.call = other),
      ]),
    ),
    'change how urgent': eachNode(guide, ({ urgency }) =>
      ['emergency', 'today', 'soon', 'none']
        .filter((other) => urgency !== undefined && other !== urgency)
        .map((other) => [`urgency ${other}`, (n) => (n.urgency = other)]),
    ),
    'forget the breaker': eachNode(guide, (node) =>
      node['breaker-stays-off'] ? [['breaker on', (n) => delete n['breaker-stays-off']]] : [],
    ),
    'forget whose stop it is': eachNode(guide, ({ danger }) =>
      danger === undefined ? [] : [['no danger', (n) => delete n.danger]],
    ),
  };
  return Object.entries(kinds).flatMap(([slip, changes]) =>
    changes.map(([name, change]) => ({
      slip,
      name,
      source: () => {
        const copy = structuredClone(guide);
        change(copy);
        // JSON is YAML, and read in half the time.
        return JSON.stringify(copy);
      },
    })),
  );
}
