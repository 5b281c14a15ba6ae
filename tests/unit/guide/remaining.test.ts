import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { moreQuestions, remaining } from '../../../src/guide/remaining.ts';
import type { Guide, NodeId } from '../../../src/guide/types.ts';
import { randomGuide } from './support/random-guide.ts';
import { realGuide } from './support/real.ts';
import { oracle } from './support/oracle.ts';

const guide = realGuide();

/** Answers left, by trying every way. */
function ways(of: Guide, id: NodeId): number[] {
  const answers = of.nodes.get(id)?.answers ?? [];
  return answers.length === 0
    ? [0]
    : answers.flatMap(({ to }) => ways(of, to).map((left) => left + 1));
}

describe('remaining', () => {
  it('is none at every end, and the longest way at the start', () => {
    const left = remaining(guide);
    const ends = [...guide.nodes.values()].filter(({ answers }) => answers.length === 0);
    expect(ends.length).toBeGreaterThan(10);
    for (const { id } of ends) expect(left.get(id)).toEqual({ least: 0, most: 0 });
    expect(left.get(guide.start)).toEqual({ least: 1, most: 25 });
  });

  it('is the shortest and the longest of all ways, on random guides', () => {
    let tried = 0;
    fc.assert(
      fc.property(randomGuide, (random) => {
        const dangling = [...random.nodes.values()].some(({ answers }) =>
          answers.some(({ to }) => !random.nodes.has(to)),
        );
        // Guides as the loader lets them through: no loops, no names of no node.
        fc.pre(!dangling && !oracle(random).loops);
        const left = remaining(random);
        for (const id of random.nodes.keys()) {
          const all = ways(random, id);
          expect(left.get(id)).toEqual({ least: Math.min(...all), most: Math.max(...all) });
          tried += 1;
        }
      }),
      { numRuns: 300, seed: 7 },
    );
    expect(tried).toBeGreaterThan(1000);
  });

  it('is told as about so many more, only where all ways are about as long', () => {
    expect(moreQuestions({ least: 1, most: 1 })).toBe(0);
    expect(moreQuestions({ least: 1, most: 4 })).toBe(2);
    expect(moreQuestions({ least: 4, most: 4 })).toBe(3);
    expect(moreQuestions({ least: 1, most: 5 })).toBeUndefined();
    expect(moreQuestions({ least: 0, most: 0 })).toBeUndefined();
  });

  it('is never told farther from the truth than by the spread, of any page of the guide', () => {
    const told = [...remaining(guide)].filter(([id]) => guide.nodes.get(id)?.answers.length);
    expect(told.filter(([, left]) => moreQuestions(left) !== undefined).length).toBeGreaterThan(5);
    for (const [id, left] of told) {
      const more = moreQuestions(left);
      if (more !== undefined)
        for (const way of ways(guide, id)) expect(Math.abs(way - 1 - more)).toBeLessThanOrEqual(2);
    }
  });

  it('takes a guide of 100,000 pages in a row', () => {
    const [first] = guide.nodes.values();
    if (!first) throw new Error('no node');
    const count = 100_000;
    const nodes = Array.from({ length: count }, (_, i) => ({
      ...first,
      id: `n${i}` as NodeId,
      answers: first.answers.slice(0, 1).map((one) => ({ ...one, to: `n${i + 1}` as NodeId })),
    }));
    const last = { ...first, id: `n${count}` as NodeId, answers: [] };
    const long = new Map([...nodes, last].map((node) => [node.id, node]));
    const left = remaining({ ...guide, start: 'n0' as NodeId, nodes: long });
    expect(left.get('n0' as NodeId)).toEqual({ least: count, most: count });
  });
});
