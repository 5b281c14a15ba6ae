import { checkKey } from './evidence.ts';
import { at, normalised, sum } from './numbers.ts';
import type { Evidence, EvidenceGiven, EvidenceTable, FaultId, Model, Rule } from './types.ts';

/** How much one answer speaks for a fault (above 0) or against it (below 0). */
export interface Weight extends EvidenceGiven {
  readonly decibans: number;
}

export interface Share {
  readonly fault: FaultId;
  /** Posterior probability; the shares of a model sum to 1. */
  readonly share: number;
  /** One for each informative answer, in the order given. */
  readonly weights: readonly Weight[];
}

/** One informative answer with its likelihood for each fault, in the model's order. */
export interface Informative extends EvidenceGiven {
  /** P(answer | fault, the informative answers before it). */
  readonly likelihood: readonly number[];
}

/** An answer with the rules of its table that the other answers leave open. */
interface Heard extends EvidenceGiven, Pick<EvidenceTable, 'told'> {
  /** P(answer) in each row of the table. */
  readonly column: readonly number[];
  readonly rowOf: readonly number[];
  readonly rules: readonly Rule[];
  readonly supersedes: readonly string[];
}

function heardOf(model: Model, { key, answer }: EvidenceGiven): Heard[] {
  const table = model.evidence.find((one) => one.key === key);
  const check = table ? undefined : model.checks.find(({ id }) => checkKey(id) === key);
  const place = table
    ? table.answers.indexOf(answer)
    : (check?.results.findIndex(({ id }) => id === answer) ?? -1);
  if (place < 0) return [];
  const column = (table?.rows ?? check?.likelihoods ?? []).map((row) => at(row, place));
  const { rules = [], supersedes: over = {}, told = {} } = table ?? {};
  const supersedes = over[answer] ?? [];
  const rowOf = table?.rowOf ?? model.faults.map((_, fault) => fault);
  return [{ key, answer, column, rowOf, rules, supersedes, told }];
}

/** The answers that count: known to the model, and neither superseded nor told by another. */
function heard(model: Model, evidence: Evidence): Heard[] {
  const known = evidence.flatMap((one) => heardOf(model, one));
  const over = new Set(known.flatMap(({ supersedes }) => supersedes));
  const given = new Map(evidence.map(({ key, answer }) => [key, answer]));
  const isGiven = ([key, answers]: readonly [string, readonly string[]]) =>
    answers.includes(given.get(key) ?? '');
  const holds = ({ given: needed = [] }: Rule) => needed.every(isGiven);
  return known
    .filter(({ key, told = {} }) => !over.has(key) && !Object.entries(told).some(isGiven))
    .map((one) => ({ ...one, rules: one.rules.filter(holds) }));
}

/** P(answer | fault, facts): from the first rule that holds, else from the fault's own row. */
function chance({ column, rowOf, rules }: Heard, fault: number, values: readonly number[]): number {
  const rule = rules.find(
    ({ faults, if: facts = [] }) =>
      (faults?.includes(fault) ?? true) &&
      facts.every(([fact, ones]) => ones.includes(values[fact] ?? -1)),
  );
  return at(column, rule?.row ?? at(rowOf, fault));
}

const factsOf = ({ rules }: Heard): number[] =>
  rules.flatMap((rule) => (rule.if ?? []).map(([fact]) => fact));

/** Facts that some answer ties together, with the weight of each combination of their values. */
interface Tied {
  readonly facts: readonly number[];
  /** Each combination, its values at the places of their facts in the model. */
  readonly combinations: readonly (readonly number[])[];
  /** For each fault, for each combination: P(values, answers so far | fault). */
  readonly weights: readonly Float64Array[];
}

/** The facts that answers touch, those tied by one answer together: sets, each fact in one. */
function tiedFacts(list: readonly Heard[]): readonly (readonly number[])[] {
  return list.map(factsOf).reduce<readonly (readonly number[])[]>((sets, facts) => {
    if (facts.length === 0) return sets;
    const joined = sets.filter((set) => set.some((fact) => facts.includes(fact)));
    const rest = sets.filter((set) => !joined.includes(set));
    return [...rest, [...new Set([...facts, ...joined.flat()])]];
  }, []);
}

function tie(model: Model, facts: readonly number[]): Tied {
  const all = model.facts ?? [];
  const combinations = facts.reduce<number[][]>(
    (list, fact) =>
      list.flatMap((values) =>
        at(all, fact).values.map((_, value) => {
          const next = [...values];
          next[fact] = value;
          return next;
        }),
      ),
    [[]],
  );
  const weights = model.faults.map((_, fault) =>
    Float64Array.from(combinations, (values) =>
      facts.reduce((product, one) => {
        const { rows, rowOf } = at(all, one);
        return product * at(at(rows, at(rowOf, fault)), at(values, one));
      }, 1),
    ),
  );
  return { facts, combinations, weights };
}

/**
 * The answers that carry information: those that a table of the model lists, and results of
 * checks (key `check.` and the check's name), superseded ones left out.
 *
 * Of faults f, hidden facts h and answers a₁ … aₙ the model says
 *
 *   P(f, h, a₁ … aₙ) = P(f) · Πⱼ P(hⱼ | f) · Πₖ P(aₖ | f, h, given answers)
 *
 * so the facts are summed out exactly: those that no answer ties together each by itself. An
 * answer that depends on no fact is a factor alone. Answers about one fact count it once: the
 * second tells only what it adds to the first.
 */
export function informative(model: Model, evidence: Evidence): Informative[] {
  const list = heard(model, evidence);
  const groups = tiedFacts(list).map((facts) => tie(model, facts));
  return list.map((one) => {
    const group = groups.find(({ facts }) => factsOf(one).some((fact) => facts.includes(fact)));
    const likelihood = model.faults.map((_, fault) => {
      if (!group) return chance(one, fault, []);
      const weights = at(group.weights, fault);
      const before = sum(weights);
      for (const [place, values] of group.combinations.entries())
        weights[place] = at(weights, place) * chance(one, fault, values);
      return sum(weights) / before;
    });
    return { key: one.key, answer: one.answer, likelihood };
  });
}

/** 10·log10 of a ratio given as a difference of natural logarithms: decibans. */
const DECIBANS = 10 / Math.LN10;

/** The sums of a list before each place. */
function before(list: readonly number[]): number[] {
  let total = 0;
  return list.map((one) => {
    const sum = total;
    total += one;
    return sum;
  });
}

/** For each place the sum of all others; not as all minus own, which would cancel near all. */
function others(list: readonly number[]): number[] {
  const after = before(list.toReversed()).toReversed();
  return before(list).map((sum, place) => sum + at(after, place));
}

/**
 * P(answer | any fault but this one), for each: the likelihood averaged over the others,
 * each weighted by what is believed of it before this answer.
 */
function complements(now: readonly number[], likelihood: readonly number[]): number[] {
  const mass = others(now);
  const joint = others(now.map((share, fault) => share * at(likelihood, fault)));
  return joint.map((one, fault) =>
    at(mass, fault) > 0 ? one / at(mass, fault) : at(likelihood, fault),
  );
}

/**
 * Share of each fault after the evidence, in the model's order: single-fault Bayes in log
 * space, P(f | a) ∝ P(f) Πₖ P(aₖ | f, a₁ … aₖ₋₁).
 */
export function shares(model: Model, evidence: Evidence): number[] {
  const given = informative(model, evidence);
  return normalised(
    model.faults.map(({ prior }, fault) =>
      given.reduce((log, { likelihood }) => log + Math.log(at(likelihood, fault)), Math.log(prior)),
    ),
  );
}

/**
 * Posterior over the faults, the likeliest first (ties in the model's order).
 *
 * Each answer's weight of evidence for a fault is 10·log10 of the Bayes factor
 * of the fault against its complement, given the answers before it (I. J. Good,
 * "Probability and the Weighing of Evidence", 1950). So prior log-odds plus all
 * weights give the posterior log-odds exactly.
 */
export function posterior(model: Model, evidence: Evidence): Share[] {
  const weights: Weight[][] = model.faults.map(() => []);
  let logs = model.faults.map(({ prior }) => Math.log(prior));
  for (const { key, answer, likelihood } of informative(model, evidence)) {
    const rest = complements(normalised(logs), likelihood);
    for (const [fault, list] of weights.entries()) {
      const nats = Math.log(at(likelihood, fault)) - Math.log(at(rest, fault));
      list.push({ key, answer, decibans: DECIBANS * nats });
    }
    logs = logs.map((log, fault) => log + Math.log(at(likelihood, fault)));
  }
  const after = normalised(logs);
  return model.faults
    .map(({ id }, index) => ({ fault: id, share: at(after, index), weights: at(weights, index) }))
    .sort((a, b) => b.share - a.share);
}
