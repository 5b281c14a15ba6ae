import { detailKey, evidenceOf } from '../../../../src/diagnosis/evidence.ts';
import { draw } from '../../../../src/diagnosis/random.ts';
import type { Random } from '../../../../src/diagnosis/random.ts';
import type { Evidence, Model } from '../../../../src/diagnosis/types.ts';
import type { Detail } from '../../../../src/guide/details.ts';
import type { Given, Guide, GuideNode } from '../../../../src/guide/types.ts';

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
}

/** How often a caller is unsure, and how often an optional detail is answered. Our own choice. */
const UNSURE = 0.05;
const DETAIL = 0.5;

/** An answer to one question, drawn for a fault; undefined when no table speaks of it. */
function drawAnswer(truth: Model, key: string, fault: number, random: Random): string | undefined {
  const table = truth.evidence.find((one) => one.key === key);
  const row = table?.rows[table.rowOf[fault] ?? 0];
  return row && table.answers[draw(row, random)];
}

function answerAt(node: GuideNode, world: World, fault: number, random: Random) {
  const named = (id: string) => node.answers.find((answer) => String(answer.id) === id);
  const { truth, guide } = world;
  const known = truth.evidence.some(({ key }) => key === String(node.sentences));
  if (!known) {
    // A question that tells nothing about the fault: on, by the first way there is.
    const on = node.answers.find(({ to }) => guide.nodes.get(to)?.kind !== 'stop');
    return on ?? node.answers[0];
  }
  if (random() < UNSURE) return named('unsure') ?? node.answers[0];
  for (;;) {
    // A later step may offer fewer of the answers: drawn again until one is offered.
    const answer = named(drawAnswer(truth, String(node.sentences), fault, random) ?? '');
    if (answer) return answer;
  }
}

/** One caller's way through the guide; undefined when the door came open and nobody drives. */
function caller(world: World, random: Random): Simulated | undefined {
  const { guide, details, truth } = world;
  const fault = draw(
    truth.faults.map(({ prior }) => prior),
    random,
  );
  const journey: Given[] = [];
  let node = guide.nodes.get(guide.start);
  while (node && node.answers.length > 0) {
    const answer = answerAt(node, world, fault, random);
    if (!answer) throw new Error(`no way on from ${node.id}`);
    journey.push({ at: node.id, answer: answer.id });
    node = guide.nodes.get(answer.to);
  }
  if (node?.kind !== 'stop') return undefined;
  const told: Record<string, string> = {};
  for (const { id } of details) {
    const answer = drawAnswer(truth, detailKey(id), fault, random);
    if (answer !== undefined && random() < DETAIL) told[id] = answer;
  }
  return { fault, evidence: evidenceOf(guide, journey, told) };
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
