import { readFileSync } from 'node:fs';
import { loadGuide } from '../../../src/guide/load.ts';
import type { Guide, Journey, NodeId } from '../../../src/guide/types.ts';

/** The locked-door guide, read from its file as the build reads it. */
export function doorLocked(): Guide {
  const file = 'content/guides/door-locked/graph.yaml';
  const loaded = loadGuide(readFileSync(file, 'utf8'), file);
  if (!loaded.ok) throw new Error(JSON.stringify(loaded.error));
  return loaded.value;
}

/** A shortest journey to every node: breadth first from the start, exits aside. */
export function shortestWays(guide: Guide): ReadonlyMap<NodeId, Journey> {
  const ways = new Map<NodeId, Journey>([[guide.start, []]]);
  for (const [at, journey] of ways)
    for (const { id, to } of guide.nodes.get(at)?.answers ?? [])
      if (!ways.has(to)) ways.set(to, [...journey, { at, answer: id }]);
  return ways;
}
