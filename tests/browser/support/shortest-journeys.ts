import { guides as read } from '../../../src/content/load.ts';
import type { Guide, Journey, NodeId } from '../../../src/guide/types.ts';

/** Every guide, read from its file as the build reads it. */
export const guides: readonly Guide[] = read();

/** The locked-door guide. */
export function doorLocked(): Guide {
  const guide = guides.find(({ id }) => (id as string) === 'door-locked');
  if (!guide) throw new Error('no door-locked');
  return guide;
}

/** A shortest journey to every node: breadth first from the start, exits aside. */
export function shortestJourneys(guide: Guide): ReadonlyMap<NodeId, Journey> {
  const shortest = new Map<NodeId, Journey>([[guide.start, []]]);
  for (const [at, journey] of shortest)
    for (const { id, to } of guide.nodes.get(at)?.answers ?? [])
      if (!shortest.has(to)) shortest.set(to, [...journey, { at, answer: id }]);
  return shortest;
}
