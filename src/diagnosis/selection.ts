/** Which calls become visits: those visited are chosen callers, and what they tell is chosen with them. */
import type { Guide, GuideNode } from '../guide/types.ts';
import { COMPLAINT, VISIT, complaintOf, conditionsIn, keyIn } from './evidence.ts';
import { at, sum } from './numbers.ts';
import type { EvidenceTable, Model } from './types.ts';

/** Plain JSON, so that a page can carry it. */
export interface Selection {
  /** Guide → for each fault, in the model's order, P(the call ends in a visit | fault, that complaint). */
  readonly visit: Readonly<Record<string, readonly number[]>>;
  /** Keys of the tables whose answers decide whether anybody drives: visits show them askew. */
  readonly deciding: readonly string[];
}

/** How often a caller is not sure. Our own choice, no source. */
const UNSURE = 0.05;
/** An answer's share among visits may be so far from its share among calls; beyond, it decides. */
const ASKEW = 0.05;

/** Where a call stands: the page, and those answers so far that rows of tables are `given`. */
interface State {
  readonly node: GuideNode;
  readonly said: Readonly<Record<string, string>>;
}

interface Way {
  readonly to: State;
  readonly chance: number;
  /** The table that speaks of the page, and the place of the answer; none where nobody knows. */
  readonly told?: readonly [key: string, answer: number];
}

/** One caller: the fault, and the places of the values of the hidden facts. */
interface Caller {
  readonly fault: number;
  readonly facts: readonly number[];
}

interface Course {
  readonly guide: Guide;
  readonly tables: ReadonlyMap<string, EvidenceTable>;
  /** Each page's key, and the complaint of who stands there. */
  readonly pages: ReadonlyMap<string, { readonly key: string; readonly complaint: string }>;
  /** Answers that a row of some page's table is `given`, as `key.answer`. */
  readonly remembered: ReadonlySet<string>;
}

const nameOf = ({ node, said }: State) => `${node.id} ${Object.values(said).join(' ')}`;

function rowAt(table: EvidenceTable, complaint: string, { said }: State, caller: Caller) {
  const rule = table.rules?.find(
    ({ faults, if: facts = [], given = [] }) =>
      (faults?.includes(caller.fault) ?? true) &&
      facts.every(([fact, values]) => values.includes(caller.facts[fact] ?? -1)) &&
      given.every(([key, answers]) =>
        answers.includes((key === COMPLAINT ? complaint : said[key]) ?? ''),
      ),
  );
  return at(table.rows, rule?.row ?? at(table.rowOf, caller.fault));
}

/** The ways on from a page; none from an end. Answers that it does not offer are drawn again. */
function waysFrom(course: Course, state: State, caller: Caller): readonly Way[] {
  const { guide, tables, pages, remembered } = course;
  const { answers, id } = state.node;
  if (answers.length === 0) return [];
  const { key = '', complaint = '' } = pages.get(id) ?? {};
  const table = tables.get(key);
  const next = (answer: (typeof answers)[number]): State => {
    const node = guide.nodes.get(answer.to);
    if (!node) throw new RangeError(`no page ${answer.to}`);
    const { [key]: _, ...others } = state.said;
    return {
      node,
      said: remembered.has(`${key}.${answer.id}`) ? { ...others, [key]: answer.id } : others,
    };
  };
  const calm = answers.find(({ to }) => guide.nodes.get(to)?.kind !== 'stop') ?? at(answers, 0);
  if (!table) return [{ to: next(calm), chance: 1 }];
  const unsure = answers.find(({ id }) => String(id) === 'unsure') ?? calm;
  const row = rowAt(table, complaint, state, caller);
  const offered = answers.flatMap((answer) => {
    const place = table.answers.indexOf(answer.id);
    return place < 0 ? [] : [{ answer, place, p: at(row, place) }];
  });
  const all = sum(offered.map(({ p }) => p));
  if (all === 0) return [{ to: next(calm), chance: 1 }];
  return [
    { to: next(unsure), chance: UNSURE },
    ...offered.map(({ answer, place, p }) => ({
      ...{ to: next(answer), chance: ((1 - UNSURE) * p) / all },
      told: [key, place] as const,
    })),
  ];
}

/** Mass of each answer among calls and among visits: key → fault → answer. */
type Tally = Map<string, Map<number, { calls: number[]; visits: number[] }>>;

/**
 * P(visit) of one caller, exact: the calls in each state are passed on along the ways, step by
 * step, then the chance of a visit is passed back. `weight` of them are counted in the tally.
 */
function follow(course: Course, caller: Caller, weight: number, tally: Tally): number {
  const { guide, tables } = course;
  const start = guide.nodes.get(guide.start);
  if (!start) throw new RangeError(`no page ${guide.start}`);
  const first: State = { node: start, said: {} };
  const steps = new Map<string, { state: State; ways: readonly Way[] }>();
  const ends = new Map<string, number>();
  // Guides never go round in a circle, so each state is met after all that it leads to.
  const chanceFrom = (state: State): number => {
    const name = nameOf(state);
    const known = ends.get(name);
    if (known !== undefined) return known;
    const ways = waysFrom(course, state, caller);
    const chance =
      ways.length === 0
        ? Number(state.node.kind === 'stop')
        : sum(ways.map((way) => way.chance * chanceFrom(way.to)));
    ends.set(name, chance);
    steps.set(name, { state, ways });
    return chance;
  };
  const visit = chanceFrom(first);
  const mass = new Map([[nameOf(first), weight]]);
  for (const [name, { ways }] of [...steps].toReversed()) {
    const here = mass.get(name) ?? 0;
    for (const { to, chance, told } of ways) {
      const there = nameOf(to);
      const moved = here * chance;
      mass.set(there, (mass.get(there) ?? 0) + moved);
      if (!told) continue;
      const [key, answer] = told;
      const zeros = () => (tables.get(key)?.answers ?? []).map(() => 0);
      const faults = tally.get(key) ?? new Map<number, { calls: number[]; visits: number[] }>();
      tally.set(key, faults);
      const counts = faults.get(caller.fault) ?? { calls: zeros(), visits: zeros() };
      faults.set(caller.fault, counts);
      counts.calls[answer] = at(counts.calls, answer) + moved;
      counts.visits[answer] = at(counts.visits, answer) + moved * (ends.get(there) ?? 0);
    }
  }
  return visit;
}

/** All combinations of values of the facts on which the tables hang; 0 for the others. */
function combinations({ facts = [] }: Model, used: ReadonlySet<number>): number[][] {
  return facts.reduce<number[][]>(
    (list, { values }, fact) =>
      list.flatMap((one) => (used.has(fact) ? values.map((_, v) => [...one, v]) : [[...one, 0]])),
    [[]],
  );
}

/**
 * Which calls become visits, by the figures and the guides alone: a call follows its guide as
 * the figures say that callers with its fault answer, and becomes a visit where that ends at a
 * stop and the trouble has not cured itself by then. Pages that no table speaks of are passed
 * by the first answer that is no stop.
 *
 * @param guides those that callers begin in
 */
export function selectionOf(model: Model, guides: readonly Guide[]): Selection {
  const complaints = model.evidence.find(({ key }) => key === COMPLAINT);
  const needed = model.evidence.find(({ key }) => key === VISIT);
  const tables = new Map(model.evidence.map((table) => [table.key, table]));
  const keys = new Set(tables.keys());
  const tally: Tally = new Map();
  const visit = guides.flatMap((guide) => {
    const place = complaints?.answers.indexOf(guide.id) ?? -1;
    if (place < 0) return [];
    const pages = new Map(
      [...guide.nodes.values()].map(({ id, sentences, guide: last }) => {
        const complaint = complaintOf(model, { first: guide.id, last }) ?? '';
        return [id, { key: keyIn(keys, guide.id, sentences), complaint }];
      }),
    );
    const asked = new Set([...pages.values()].map(({ key }) => key));
    const rules = [...asked].flatMap((key) => tables.get(key)?.rules ?? []);
    const used = new Set(rules.flatMap(({ if: facts = [] }) => facts.map(([fact]) => fact)));
    const remembered = conditionsIn(rules);
    const course = { guide, tables, pages, remembered };
    const chances = model.faults.map(({ prior }, fault) => {
      const calls = complaints ? at(at(complaints.rows, at(complaints.rowOf, fault)), place) : 1;
      return sum(
        combinations(model, used).map((facts) => {
          const fits = facts.reduce((product, value, index) => {
            const { rows, rowOf } = at(model.facts ?? [], index);
            return used.has(index) ? product * at(at(rows, at(rowOf, fault)), value) : product;
          }, 1);
          return fits * follow(course, { fault, facts }, prior * calls * fits, tally);
        }),
      );
    });
    const stays = (fault: number) => (needed ? at(at(needed.rows, at(needed.rowOf, fault)), 0) : 1);
    return [[guide.id, chances.map((one, fault) => one * stays(fault))] as const];
  });
  return { visit: Object.fromEntries(visit), deciding: decidingIn(tally) };
}

/** The tables in which some answer's share among a fault's visits is not that among its calls. */
function decidingIn(tally: Tally): string[] {
  return [...tally].flatMap(([key, faults]) => {
    const counts = [...faults.values()];
    const visited = sum(counts.flatMap(({ visits }) => visits));
    const askew = sum(
      counts.map(({ calls, visits }) => {
        const [called, went] = [sum(calls), sum(visits)];
        if (went === 0) return 0;
        const off = calls.map((one, answer) => Math.abs(at(visits, answer) / went - one / called));
        return (went / visited) * Math.max(...off);
      }),
    );
    return askew > ASKEW ? [key] : [];
  });
}
