import { bit } from './graph.ts';
import type { Arc, FactSet, Graph } from './graph.ts';
import type { GuideNode } from '../guide/types.ts';

/**
 * Facts that stay true once they were: an error that was seen stays seen, whatever a
 * later answer clears.
 */
const STICKY = bit(
  ...([
    'error-seen',
    'inside-something',
    'door-forced',
    'breaker-tripped',
    'trouble-seen',
  ] as const),
);
const COOLED = bit('cooled');

/**
 * What holds after an answer, from what held before it. After a step that can heat,
 * `cooled` is gone unless the answer itself says so.
 */
export function after(held: FactSet, node: GuideNode | undefined, arc: Arc): FactSet {
  const cleared = (arc.clears & ~STICKY) | (node?.heat ? COOLED : 0);
  return (held & ~cleared) | arc.sets;
}

/** For each node, on arrival there: */
export interface Flow {
  /** facts that hold in at least one journey, */
  readonly may: Int32Array;
  /** facts that hold in every journey, */
  readonly must: Int32Array;
  /** and the most breaker steps passed before it in one journey, counted up to 3. */
  readonly breakers: Int32Array;
}

/**
 * Forward data flow over the whole guide (Kildall 1973, from memory): union for
 * `may`, intersection for `must`. Setting and clearing act on each fact alone, so
 * the result is exact for every single fact, not an approximation: the meet over
 * all journeys. Passes in topological order until nothing changes: without loops
 * the first one is enough.
 */
export function flowOf(graph: Graph): Flow {
  const count = graph.nodes.length;
  const may = new Int32Array(count);
  const must = new Int32Array(count).fill(-1);
  const breakers = new Int32Array(count);
  if (graph.start >= 0) must[graph.start] = 0;
  let changed = true;
  while (changed) {
    changed = false;
    for (const from of graph.order) {
      const node = graph.nodes[from];
      const passed = Math.min(3, (breakers[from] ?? 0) + (node?.action === 'breaker' ? 1 : 0));
      for (const arc of graph.edges[from] ?? []) {
        if (arc.to < 0) continue;
        const mayThere = (may[arc.to] ?? 0) | after(may[from] ?? 0, node, arc);
        const mustThere = (must[arc.to] ?? 0) & after(must[from] ?? 0, node, arc);
        const most = Math.max(breakers[arc.to] ?? 0, passed);
        changed ||=
          mayThere !== may[arc.to] || mustThere !== must[arc.to] || most !== breakers[arc.to];
        may[arc.to] = mayThere;
        must[arc.to] = mustThere;
        breakers[arc.to] = most;
      }
    }
  }
  return { may, must, breakers };
}
