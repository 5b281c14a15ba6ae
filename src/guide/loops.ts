/**
 * One depth-first search of a directed graph, in time linear in the graph. `next` lists a node's
 * successors, always the same ones. Its reverse postorder is a topological order where there is no
 * loop (Tarjan 1976; Cormen et al., Introduction to Algorithms, section 20.4, from memory); of
 * loops there is one for each node that some way leads back to, the first met first.
 */
export function depthFirst<T>(
  roots: Iterable<T>,
  next: (node: T) => readonly T[],
): { readonly postorder: readonly T[]; readonly loops: readonly (readonly T[])[] } {
  const loops: T[][] = [];
  const postorder: T[] = [];
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
        postorder.push(top.node);
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
  return { postorder, loops };
}
