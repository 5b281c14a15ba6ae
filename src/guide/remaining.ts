import type { Guide, NodeId } from './types.ts';

/** How many answers are left until a stop or a finish; exits are not counted. */
export interface Remaining {
  readonly least: number;
  readonly most: number;
}

/**
 * For every node the answers left by the shortest and by the longest way to an end.
 * Linear in the guide; the guide must be one that was loaded, so without loops.
 */
export function remaining(guide: Guide): ReadonlyMap<NodeId, Remaining> {
  const left = new Map<NodeId, Remaining>();
  // Not recursive: a guide of 100,000 nodes in a row would overflow the stack.
  const todo = [...guide.nodes.keys()];
  for (let id = todo.at(-1); id !== undefined; id = todo.at(-1)) {
    const targets = guide.nodes.get(id)?.answers.map(({ to }) => to) ?? [];
    const unknown = left.has(id) ? [] : targets.filter((to) => !left.has(to));
    if (unknown.length > 0) {
      todo.push(...unknown);
      continue;
    }
    todo.pop();
    const after = targets.flatMap((to) => left.get(to) ?? []);
    left.set(id, {
      least: after.length > 0 ? 1 + Math.min(...after.map(({ least }) => least)) : 0,
      most: after.length > 0 ? 1 + Math.max(...after.map(({ most }) => most)) : 0,
    });
  }
  return left;
}

/** Ways on that differ by more than this many answers make no promise worth giving. */
const SPREAD_MOST = 3;

/**
 * About how many questions follow a node's own; undefined where ways differ too much to say, and at
 * an end, which asks none.
 */
export function moreQuestions({ least, most }: Remaining): number | undefined {
  return most === 0 || most - least > SPREAD_MOST ? undefined : Math.ceil((least + most) / 2) - 1;
}
