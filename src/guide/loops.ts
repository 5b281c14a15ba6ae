/**
 * Loops of a directed graph, by one depth-first search in time linear in the graph:
 * one loop for each node that some way leads back to. `next` lists a node's successors.
 */
export function findLoops<T>(roots: Iterable<T>, next: (node: T) => readonly T[]): T[][] {
  const loops: T[][] = [];
  const done = new Set<T>();
  const looped = new Set<T>();
  for (const root of roots) {
    if (done.has(root)) continue;
    // The way from the root to here, with a place in it for each node: not recursive,
    // because a guide of 100,000 nodes in a row would overflow the stack.
    const way: { node: T; turn: number }[] = [{ node: root, turn: 0 }];
    const placeOf = new Map<T, number>([[root, 0]]);
    for (let top = way.at(-1); top; top = way.at(-1)) {
      const successor = next(top.node)[top.turn];
      top.turn += 1;
      if (successor === undefined) {
        done.add(top.node);
        placeOf.delete(top.node);
        way.pop();
        continue;
      }
      const place = placeOf.get(successor);
      if (place !== undefined && !looped.has(successor)) {
        looped.add(successor);
        loops.push(way.slice(place).map((step) => step.node));
      } else if (place === undefined && !done.has(successor)) {
        placeOf.set(successor, way.length);
        way.push({ node: successor, turn: 0 });
      }
    }
  }
  return loops;
}
