import { describe, expect, it } from 'vitest';
import type { Guide, GuideNode } from '../../../src/guide/types.ts';
import { arrivals, firsts } from '../../../src/site/arrivals.ts';

type Answers = Readonly<Record<string, string>>;

/** A guide of which only what arrivals read is there. */
function guide(id: string, nodes: Readonly<Record<string, Answers>>, exits: Answers = {}): Guide {
  const list = (answers: Answers) => Object.entries(answers).map(([id, to]) => ({ id, to }));
  const made = Object.entries(nodes).map(([name, answers]) => [
    name,
    { id: name, answers: list(answers) } as unknown as GuideNode,
  ]);
  return { id, nodes: new Map(made as []), exits: list(exits) } as unknown as Guide;
}

const first = guide(
  'first',
  {
    start: { yes: 'next', over: 'second/ask' },
    next: { over: 'second/ask' },
    stop: {},
    // As a joined guide holds them.
    'second/ask': { a: 'second/end' },
    'second/end': {},
  },
  { fire: 'stop' },
);
const second = guide(
  'second',
  { start: { no: 'ask' }, ask: { a: 'end' }, end: {}, stop: {} },
  {
    fire: 'stop',
  },
);
const both = [first, second];
const node = (of: Guide, id: string): GuideNode => {
  const found = of.nodes.get(id as never);
  if (!found) throw new Error(id);
  return found;
};

describe('how a page is come to', () => {
  it('is told by its own guide’s answers and by those of guides that hand over', () => {
    expect(arrivals(both, second, node(second, 'ask'))).toBe(
      'first/start.over first/next.over start.no',
    );
    expect(arrivals(both, second, node(second, 'end'))).toBe('ask.a');
    expect(arrivals(both, first, node(first, 'next'))).toBe('start.yes');
  });

  it('is told by exits at stops', () => {
    expect(arrivals(both, first, node(first, 'stop'))).toBe('*.fire');
  });

  it('names the guides a journey may have begun in', () => {
    expect(firsts(both, second, node(second, 'end'))).toBe('second first');
    expect(firsts(both, second, node(second, 'start'))).toBe('second');
    expect(firsts(both, first, node(first, 'next'))).toBe('first');
  });
});
