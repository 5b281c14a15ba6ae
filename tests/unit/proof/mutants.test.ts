import { describe, expect, it } from 'vitest';
import { loadGuide } from '../../../src/guide/load.ts';
import { judged, noScore } from '../../mutants/score.ts';
import type { Score } from '../../mutants/score.ts';
import { mutantsOf } from '../../mutants/mutants.ts';
import type { Guide, GuideNode, NodeId } from '../../../src/guide/types.ts';
import { cases } from '../../support/sample.ts';
import { doorLocked } from '../guide/support/meaning.ts';
import { realGuide, realSource } from '../guide/support/real.ts';

/**
 * Retargeted answers are many and alike, so every so-manieth is taken (with EVERY=1, all); the
 * strides share no factor with the number of nodes or tracks, so that all targets and all answers
 * come up. Of the files taken 60 are unsafe, of the graphs 1,030: were 1 in 20 of such files, or 1 in
 * 340 of such graphs, let pass, it would show.
 */
const FILE_STRIDE = cases(37, 1);
const GRAPH_STRIDE = cases(19, 1);

/** Spoiled guides by name, judged by what their answers mean beside whether the proof objects. */
function judge(spoiled: Iterable<readonly [name: string, guide: Guide | undefined]>): Score {
  let score = noScore;
  for (const [name, guide] of spoiled) score = judged(score, name, guide, doorLocked);
  return score;
}

const mutants = mutantsOf(realSource);
const kinds = [...new Set(mutants.map(({ slip }) => slip))];

function* spoiledFiles(slip: string) {
  const stride = slip === 'retarget an answer' ? FILE_STRIDE : 1;
  const all = mutants.filter((mutant) => mutant.slip === slip);
  for (const { name, source } of all.filter((_, index) => index % stride === 0)) {
    const loaded = loadGuide(source(), 'graph.yaml');
    yield [name, loaded.ok ? loaded.value : undefined] as const;
  }
}

function* spoiledGraphs() {
  const guide = realGuide();
  // The start's answers make the exits, which the loader makes anew: see above for them.
  const edges = [...guide.nodes.values()]
    .filter(({ id }) => id !== guide.start)
    .flatMap((node) => node.answers.map(({ id, to }) => ({ node, id, to })));
  const targets = [...guide.nodes.keys()];
  const all = edges.flatMap((edge) =>
    targets.filter((to) => to !== edge.to).map((to) => ({ ...edge, to })),
  );
  expect(all.length).toBeGreaterThan(10_000);
  for (const { node, id, to } of all.filter((_, index) => index % GRAPH_STRIDE === 0))
    yield [`${node.id}.${id} → ${to}`, retargeted(guide, node, id, to)] as const;
}

const ON_ONE_PAGE = 'retarget an answer of one page only';
const slips = [...kinds, ON_ONE_PAGE];
const scores = new Map<string, Score>();

/** The score of a kind of slip, worked out once, by whichever test asks first. */
function scoreOf(slip: string): Score {
  const known =
    scores.get(slip) ?? judge(slip === ON_ONE_PAGE ? spoiledGraphs() : spoiledFiles(slip));
  scores.set(slip, known);
  return known;
}

describe('the published guide with one slip in it', () => {
  it.each(slips)('is caught when unsafe: %s', (slip) => {
    expect(scoreOf(slip).mutants).toBeGreaterThan(0);
    expect(scoreOf(slip).missed).toEqual([]);
  });

  it('was unsafe in more than a hundred ways, all of them caught', () => {
    const sum = (key: 'unsafe' | 'caught'): number =>
      slips.reduce((total, slip) => total + scoreOf(slip)[key], 0);
    expect(sum('unsafe')).toBeGreaterThan(100);
    expect(sum('caught')).toBe(sum('unsafe'));
  });
});

function retargeted(guide: Guide, node: GuideNode, id: string, to: NodeId): Guide {
  const answers = node.answers.map((answer) => (answer.id === id ? { ...answer, to } : answer));
  return { ...guide, nodes: new Map(guide.nodes).set(node.id, { ...node, answers }) };
}
