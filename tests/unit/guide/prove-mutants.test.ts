import { afterAll, describe, expect, it } from 'vitest';
import { loadGuide } from '../../../src/guide/load.ts';
import { prove } from '../../../src/guide/prove/prove.ts';
import type { Guide, GuideNode, NodeId } from '../../../src/guide/types.ts';
import { mutantsOf } from './support/mutants.ts';
import { realGuide, realSource } from './support/real.ts';
import { everyState } from './support/truth.ts';

/**
 * Retargeted answers are many and alike, so every so-manieth is taken; the strides share no
 * factor with the number of nodes or tracks, so that all targets and all answers come up.
 */
const FILE_STRIDE = 17;
const GRAPH_STRIDE = 7;

interface Score {
  mutants: number;
  /** Refused by the loader: never published. */
  refused: number;
  unsafe: number;
  caught: number;
  /** Failed by the proof although what the answers mean is still safe. */
  strict: number;
  missed: string[];
}

const scores = new Map<string, Score>();

function scoreOf(slip: string): Score {
  const fresh = { mutants: 0, refused: 0, unsafe: 0, caught: 0, strict: 0, missed: [] };
  const score = scores.get(slip) ?? fresh;
  scores.set(slip, score);
  return score;
}

/** Judge one spoiled guide by what its answers mean, and see whether the proof objects. */
function judge(guide: Guide, name: string, score: Score): void {
  const { broken } = everyState(guide);
  const { holds } = prove(guide);
  if (broken.size === 0) score.strict += holds ? 0 : 1;
  else {
    score.unsafe += 1;
    if (holds) score.missed.push(`${name}: ${[...broken].join(', ')}`);
    else score.caught += 1;
  }
}

function totals(): Omit<Score, 'missed'> {
  const sum = (key: keyof Omit<Score, 'missed'>): number =>
    [...scores.values()].reduce((total, score) => total + score[key], 0);
  return {
    mutants: sum('mutants'),
    refused: sum('refused'),
    unsafe: sum('unsafe'),
    caught: sum('caught'),
    strict: sum('strict'),
  };
}

describe('the published guide with one slip in it', () => {
  const mutants = mutantsOf(realSource);
  const slips = [...new Set(mutants.map(({ slip }) => slip))];

  it.each(slips)('is caught when unsafe: %s', (slip) => {
    const score = scoreOf(slip);
    const stride = slip === 'retarget an answer' ? FILE_STRIDE : 1;
    const taken = mutants
      .filter((mutant) => mutant.slip === slip)
      .filter((_, index) => index % stride === 0);
    expect(taken.length).toBeGreaterThan(0);
    for (const { name, source } of taken) {
      score.mutants += 1;
      const loaded = loadGuide(source(), 'graph.yaml');
      if (loaded.ok) judge(loaded.value, name, score);
      else score.refused += 1;
    }
    expect(score.missed).toEqual([]);
  });

  it('is caught when unsafe: retarget an answer of one page only', () => {
    const guide = realGuide();
    const score = scoreOf('retarget an answer of one page only');
    // The start's answers make the exits, which the loader makes anew: see above for them.
    const edges = [...guide.nodes.values()]
      .filter(({ id }) => id !== guide.start)
      .flatMap((node) => node.answers.map(({ id, to }) => ({ node, id, to })));
    const targets = [...guide.nodes.keys()];
    const all = edges.flatMap((edge) =>
      targets.filter((to) => to !== edge.to).map((to) => ({ ...edge, to })),
    );
    expect(all.length).toBeGreaterThan(10_000);
    for (const { node, id, to } of all.filter((_, index) => index % GRAPH_STRIDE === 0)) {
      score.mutants += 1;
      judge(retargeted(guide, node, id, to), `${node.id}.${id} → ${to}`, score);
    }
    expect(score.missed).toEqual([]);
  });

  it('was unsafe in more than a hundred ways, all of them caught', () => {
    const { unsafe, caught } = totals();
    expect(scores.size).toBe(slips.length + 1);
    expect(unsafe).toBeGreaterThan(100);
    expect(caught).toBe(unsafe);
  });

  afterAll(() => {
    const { mutants: count, refused, unsafe, caught, strict } = totals();
    process.stdout.write(
      `\nMutants of door-locked: ${count}. Refused by the loader ${refused}; unsafe ${unsafe}, ` +
        `caught ${caught} (score ${((100 * caught) / unsafe).toFixed(1)} %); ` +
        `failed though still safe ${strict}.\n`,
    );
  });
});

function retargeted(guide: Guide, node: GuideNode, id: string, to: NodeId): Guide {
  const answers = node.answers.map((answer) => (answer.id === id ? { ...answer, to } : answer));
  return { ...guide, nodes: new Map(guide.nodes).set(node.id, { ...node, answers }) };
}
