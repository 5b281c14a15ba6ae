import { expect } from 'vitest';
import { guides } from '../../../src/content/load.ts';

/**
 * Over all journeys of a guide: nobody with a gas oven, or with one that may be gas, is told that
 * all is well before having been asked how its flame looked. Returns how many such ends there are.
 */
export function gasFlameFirst(name: string): number {
  const guide = guides().find(({ id }) => String(id) === name);
  if (!guide) throw new Error(`no guide ${name}`);
  const nodes = new Map([...guide.nodes].map(([id, node]) => [String(id), node]));
  const todo: [id: string, open: boolean][] = [[guide.start, false]];
  const seen = new Set<string>();
  const ends = new Set<string>();
  for (let next = todo.pop(); next; next = todo.pop()) {
    const [id, open] = next;
    const state = `${id} ${String(open)}`;
    const node = nodes.get(id);
    if (seen.has(state) || node?.guide !== guide.id) continue;
    seen.add(state);
    if (node.done) {
      ends.add(id);
      expect(open, id).toBe(false);
    }
    const sentences = String(node.sentences);
    for (const answer of node.answers) {
      const mayBeGas = sentences === 'fuel' && ['gas-oven', 'unsure'].includes(String(answer.id));
      todo.push([String(answer.to), mayBeGas || (open && sentences !== 'oven-flame')]);
    }
  }
  return ends.size;
}
