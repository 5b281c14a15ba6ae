import type { Fact, Guide } from '../../src/guide/types.ts';

/** What was told once stays true. */
export type LastingFact = 'error' | 'inside' | 'forced' | 'tripped' | 'trouble';
/** What holds from an answer on, until something says otherwise. */
export type Made = 'empty' | 'gentle' | 'cool' | 'panel' | 'stays';

/**
 * What a guide's answers and pages mean, apart from what a spoiled copy of it says: answers
 * go by `page.answer`, pages by their text keys.
 */
export interface Meaning {
  /** The danger question. */
  readonly start: string;
  readonly told: Readonly<Record<string, readonly LastingFact[]>>;
  readonly makes: Readonly<Record<string, readonly Made[]>>;
  /** After these answers the breaker must be left off. */
  readonly leaveOff: ReadonlySet<string>;
  /** After these the panel must not be touched: the guide stops. */
  readonly unfit: ReadonlySet<string>;
  /** Pages that send to the emergency number. */
  readonly emergencies: ReadonlySet<string>;
  readonly heats: ReadonlySet<string>;
  /** Of those, the ones that start a whole cycle. */
  readonly startsCycle: ReadonlySet<string>;
  readonly touchesDoor: ReadonlySet<string>;
  readonly worksBreaker: ReadonlySet<string>;
  /** Pages that have an error copied. */
  readonly copiesError: ReadonlySet<string>;
  /** Pages that say that the range is fine. */
  readonly saysFine: ReadonlySet<string>;
  /** Each danger and the page written for it. */
  readonly ownStop: Readonly<Record<string, string>>;
}

const told: Readonly<Partial<Record<Fact, LastingFact>>> = {
  'error-seen': 'error',
  'inside-something': 'inside',
  'door-forced': 'forced',
  'breaker-tripped': 'tripped',
  'trouble-seen': 'trouble',
};
const made: Readonly<Partial<Record<Fact, Made>>> = {
  'inside-nothing': 'empty',
  'door-not-forced': 'gentle',
  cooled: 'cool',
  'panel-ready': 'panel',
  'stay-promised': 'stays',
};

/**
 * The meaning a guide gives itself before it is spoiled. That it is the right one is for
 * whoever reads its sentences; a slip made afterwards is judged by it.
 */
export function meaningOf(guide: Guide): Meaning {
  const nodes = [...guide.nodes.values()];
  const answers = nodes.flatMap((node) =>
    node.answers.map((answer) => ({ ...answer, key: `${node.sentences}.${answer.id}` })),
  );
  const facts = <T>(names: Readonly<Partial<Record<Fact, T>>>): Record<string, T[]> => {
    const found = new Map<string, Set<T>>();
    for (const { key, sets } of answers)
      for (const name of sets.flatMap((fact) => names[fact] ?? []))
        found.set(key, (found.get(key) ?? new Set()).add(name));
    return Object.fromEntries([...found].map(([key, set]) => [key, [...set]]));
  };
  const pages = (is: (node: (typeof nodes)[number]) => boolean): Set<string> =>
    new Set(nodes.filter(is).map(({ sentences }) => sentences));
  const saying = (is: (answer: (typeof answers)[number]) => boolean): Set<string> =>
    new Set(answers.filter(is).map(({ key }) => key));
  const start = guide.nodes.get(guide.start);
  return {
    start: start?.sentences ?? '',
    told: facts(told),
    makes: facts(made),
    leaveOff: saying(({ sets }) => sets.includes('breaker-tripped')),
    unfit: saying(({ clears }) => clears.includes('panel-ready')),
    emergencies: pages(({ urgency }) => urgency === 'emergency'),
    heats: pages(({ heat }) => heat),
    startsCycle: pages(({ heat, action }) => heat && action === 'press-key'),
    touchesDoor: pages(({ action }) => action === 'door-by-hand'),
    worksBreaker: pages(({ action }) => action === 'breaker'),
    saysFine: pages(({ done }) => done === true),
    copiesError: pages(({ kind, takesError }) => kind === 'step' && takesError),
    ownStop: Object.fromEntries(
      (start?.answers ?? [])
        .filter(({ id }) => id !== 'none')
        .map(({ id, to }) => [id, guide.nodes.get(to)?.sentences ?? '']),
    ),
  };
}
