import { afterAll, describe, expect, it } from 'vitest';
import { mutationLine } from '../../../src/cli/proof-report.ts';
import { loadGuide } from '../../../src/guide/load.ts';
import { judged, noScore } from '../../mutants/score.ts';
import type { Score } from '../../mutants/score.ts';
import { mutantsOf } from '../../mutants/mutants.ts';
import type { Guide, GuideNode, NodeId } from '../../../src/guide/types.ts';
import { doorLocked } from '../guide/support/meaning.ts';
import { realGuide, realSource } from '../guide/support/real.ts';

/**
 * Retargeted answers are many and alike, so every so-manieth is taken; the strides share no
 * factor with the number of nodes or tracks, so that all targets and all answers come up.
 */
const FILE_STRIDE = 17;
const GRAPH_STRIDE = 7;

const scores = new Map<string, Score>();

/** Judge one spoiled guide by what its answers mean, and see whether the proof objects. */
function judge(slip: string, name: string, guide: Guide | undefined): void {
  scores.set(slip, judged(scores.get(slip) ?? noScore, name, guide, doorLocked));
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
    const stride = slip === 'retarget an answer' ? FILE_STRIDE : 1;
    const taken = mutants
      .filter((mutant) => mutant.slip === slip)
      .filter((_, index) => index % stride === 0);
    expect(taken.length).toBeGreaterThan(0);
    for (const { name, source } of taken) {
      const loaded = loadGuide(source(), 'graph.yaml');
      judge(slip, name, loaded.ok ? loaded.value : undefined);
    }
    expect(scores.get(slip)?.missed).toEqual([]);
  });

  it('is caught when unsafe: retarget an answer of one page only', () => {
    const guide = realGuide();
    const slip = 'retarget an answer of one page only';
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
      judge(slip, `${node.id}.${id} → ${to}`, retargeted(guide, node, id, to));
    }
    expect(scores.get(slip)?.missed).toEqual([]);
  });

  it('was unsafe in more than a hundred ways, all of them caught', () => {
    const { unsafe, caught } = totals();
    expect(scores.size).toBe(slips.length + 1);
    expect(unsafe).toBeGreaterThan(100);
    expect(caught).toBe(unsafe);
  });

  afterAll(() => {
    process.stdout.write(`\ndoor-locked: ${mutationLine({ ...totals(), missed: [] })}\n`);
  });
});

function retargeted(guide: Guide, node: GuideNode, id: string, to: NodeId): Guide {
  const answers = node.answers.map((answer) => (answer.id === id ? { ...answer, to } : answer));
  return { ...guide, nodes: new Map(guide.nodes).set(node.id, { ...node, answers }) };
}
