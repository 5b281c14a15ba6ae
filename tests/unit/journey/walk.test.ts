import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { remaining, walk } from '../../../src/journey/walk.ts';
import type { Guide, Journey, NodeId } from '../../../src/guide/types.ts';
import { parseJourney } from '../../../src/address/journey-text.ts';
import { randomGuide } from '../guide/support/random-guide.ts';
import { realGuide } from '../guide/support/real.ts';
import { oracle } from '../guide/support/oracle.ts';

const guide = realGuide();
const end = (journey: Journey): string => {
  const walked = walk(guide, journey);
  return walked.ok ? walked.value.end.id : walked.error.code;
};

describe('walk', () => {
  it('stands at the start without an answer', () => {
    expect(end([])).toBe('danger');
  });

  it('follows answers and lists every node it passes', () => {
    const walked = walk(guide, parseJourney('danger.none~doing.never~lock-key-plain.unsure'));
    expect(walked).toMatchObject({
      ok: true,
      value: {
        nodes: ['danger', 'doing', 'lock-key-plain', 'display-plain'],
        end: { id: 'display-plain' },
      },
    });
  });

  it('lets a danger answer end the journey from any question or step', () => {
    const asking = [...guide.nodes.values()].filter(({ answers }) => answers.length > 0);
    expect(asking.length).toBeGreaterThan(50);
    expect(end(parseJourney('danger.none~doing.gas'))).toBe('stop-gas');
    expect(end(parseJourney('danger.none~doing.cleaning~still-cleaning.fire'))).toBe('stop-fire');
  });

  it('gives a page’s own "unsure" and not the danger question’s', () => {
    expect(end(parseJourney('danger.unsure'))).toBe('stop-unsure');
    expect(end(parseJourney('danger.none~doing.unsure'))).toBe('display');
  });

  it.each([
    ['danger.maybe', { code: 'no-such-answer', index: 0, at: 'danger' }],
    ['doing.ended', { code: 'not-there', index: 0, at: 'doing', here: 'danger' }],
    ['danger.none~display.time', { code: 'not-there', index: 1, at: 'display', here: 'doing' }],
    // Nothing follows a stop, not even another danger.
    ['danger.fire~stop-fire.gas', { code: 'no-such-answer', index: 1, at: 'stop-fire' }],
  ])('tells where %s goes astray', (text, error) => {
    expect(walk(guide, parseJourney(text))).toEqual({ ok: false, error });
  });
});

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
