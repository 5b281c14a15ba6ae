import {
  COMPLAINT,
  VISIT,
  detailKey,
  evidenceOf,
  observed,
} from '../../../../src/diagnosis/evidence.ts';
import type { Random } from '../../../../src/diagnosis/random.ts';
import type { Evidence, Model } from '../../../../src/diagnosis/types.ts';
import type { Detail } from '../../../../src/guide/details.ts';
import { qualify } from '../../../../src/guide/ids.ts';
import type { Given, Guide } from '../../../../src/guide/types.ts';

/** An index drawn from a distribution that sums to 1. */
export function draw(distribution: readonly number[], random: Random): number {
  let left = random();
  const index = distribution.findIndex((one) => (left -= one) < 0);
  // Rounding can leave a last sliver above the sum.
  return index < 0 ? distribution.length - 1 : index;
}

/** A visit as it came about: what was wrong (its place in the model) and what was answered. */
export interface Simulated {
  readonly fault: number;
  readonly evidence: Evidence;
}

export interface World {
  readonly guide: Guide;
  readonly details: readonly Detail[];
  /** The figures by which the answers come about. */
  readonly truth: Model;
  readonly manner?: Partial<Manner>;
}

/** How callers answer: parts of all answers, in [0, 1]. */
export interface Manner {
  readonly unsure: number;
  /** Optional details answered. */
  readonly details: number;
  /** Any other answer of the page in place of the one drawn. */
  readonly wrong: number;
  /** Calls with a second fault, which speaks in every third answer. */
  readonly second: number;
  /**
   * Answers drawn by one number of the caller's own in place of a new one: two such answers hang
   * together beyond what the model knows of, each by itself as likely as the model says.
   */
  readonly alike: number;
}

/** Our own choice, no source. */
const USUAL: Manner = { unsure: 0.05, details: 0.5, wrong: 0, second: 0, alike: 0 };
const SECOND_SPEAKS = 1 / 3;

/** What a caller's answers hang on besides the fault: the values of the hidden facts. */
type Hidden = readonly number[];

function drawFacts({ facts = [] }: Model, fault: number, random: Random): Hidden {
  return facts.map(({ rows, rowOf }) => draw(rows[rowOf[fault] ?? 0] ?? [], random));
}

/** An answer to one question, drawn for a fault; undefined when no table speaks of it. */
function drawAnswer(
  truth: Model,
  key: string,
  { fault, hidden, said }: { fault: number; hidden: Hidden; said: ReadonlyMap<string, string> },
  random: Random,
): string | undefined {
  const table = truth.evidence.find((one) => one.key === key);
  const rule = table?.rules?.find(
    ({ faults, if: facts = [], given = [] }) =>
      (faults?.includes(fault) ?? true) &&
      facts.every(([fact, values]) => values.includes(hidden[fact] ?? -1)) &&
      given.every(([other, answers]) => answers.includes(said.get(other) ?? '')),
  );
  const row = table?.rows[rule?.row ?? table.rowOf[fault] ?? 0];
  return row && table.answers[draw(row, random)];
}

/** One caller's way through the guide; undefined when nobody drives. */
function caller(world: World, random: Random): Simulated | undefined {
  const { guide, details, truth } = world;
  const table = truth.evidence.find(({ key }) => key === COMPLAINT);
  const calls = table?.answers.indexOf(guide.id) ?? -1;
  // Those whose trouble leads them to this guide.
  const weights = truth.faults.map(
    ({ prior }, fault) => prior * (table?.rows[table.rowOf[fault] ?? 0]?.[calls] ?? 1),
  );
  const total = weights.reduce((a, b) => a + b, 0);
  const fault = draw(
    weights.map((one) => one / total),
    random,
  );
  const manner = { ...USUAL, ...world.manner };
  const faults = [fault];
  if (random() < manner.second)
    faults.push(
      draw(
        weights.map((one) => one / total),
        random,
      ),
    );
  const own = random();
  const source = () => (random() < manner.alike ? own : random());
  const facts = faults.map((one) => drawFacts(truth, one, random));
  const speaking = () => {
    const index = faults.length > 1 && random() < SECOND_SPEAKS ? 1 : 0;
    return { fault: faults[index] ?? fault, hidden: facts[index] ?? [] };
  };
  const journey: Given[] = [];
  let node = guide.nodes.get(guide.start);
  const course = () => ({ first: guide.id, last: node?.guide ?? guide.id });
  const said = () =>
    new Map(
      observed(truth, course(), evidenceOf(guide, journey)).map(({ key, answer }) => [key, answer]),
    );
  const tables = new Set(truth.evidence.map(({ key }) => key));
  while (node && node.answers.length > 0) {
    const { sentences, answers } = node;
    const full = qualify(guide.id, sentences);
    const key = tables.has(full) ? full : full.slice(full.indexOf('/') + 1);
    let answer = answers.find(({ to }) => guide.nodes.get(to)?.kind !== 'stop') ?? answers[0];
    if (tables.has(key)) {
      if (random() < manner.unsure)
        answer = answers.find(({ id }) => String(id) === 'unsure') ?? answers[0];
      else
        for (let tries = 0, found = false; !found; tries++) {
          // A later step may offer fewer of the answers: drawn again until one is offered.
          const drawn = drawAnswer(
            truth,
            key,
            { ...speaking(), said: said() },
            tries > 0 ? random : source,
          );
          const offered = answers.find(({ id }) => String(id) === drawn);
          found = offered !== undefined || tries > 200;
          answer = offered ?? answer;
        }
    }
    if (tables.has(key) && random() < manner.wrong) {
      const others = answers.filter(
        ({ id, to }) => id !== answer?.id && guide.nodes.get(to)?.kind !== 'stop',
      );
      answer = others[Math.floor(random() * others.length)] ?? answer;
    }
    if (!answer) throw new Error(`no way on from ${node.id}`);
    journey.push({ at: node.id, answer: answer.id });
    node = guide.nodes.get(answer.to);
  }
  if (node?.kind !== 'stop') return undefined;
  const needed = truth.evidence.find(({ key }) => key === VISIT);
  // What cured itself by then needs no visit.
  if (needed && random() >= (needed.rows[needed.rowOf[fault] ?? 0]?.[0] ?? 1)) return undefined;
  const told: Record<string, string> = {};
  for (const { id } of details) {
    const answer = drawAnswer(truth, detailKey(id), { ...speaking(), said: said() }, source);
    if (answer !== undefined && random() < manner.details) told[id] = answer;
  }
  const visit = { ...course(), visit: true };
  return { fault, evidence: observed(truth, visit, evidenceOf(guide, journey, told)) };
}

/** So many visits drawn from the model: callers whose journey ends at a stop. */
export function simulate(world: World, count: number, random: Random): Simulated[] {
  const visits: Simulated[] = [];
  while (visits.length < count) {
    const visit = caller(world, random);
    if (visit) visits.push(visit);
  }
  return visits;
}
