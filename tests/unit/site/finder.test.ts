import { describe, expect, it } from 'vitest';
import { finder, guides } from '../../../src/content/load.ts';
import { guidesInOrder, mainGuide, sayings } from '../../../src/site/finder.ts';

describe('the finder', () => {
  it('reaches every guide: one tap opens a group, the next its saying', () => {
    const reached = new Set(
      sayings().flatMap((group) => group.sayings.map(({ guide }) => guide.id)),
    );
    expect(guides().length).toBeGreaterThan(0);
    expect([...reached].toSorted()).toEqual(
      guides()
        .map(({ id }) => id)
        .toSorted(),
    );
  });

  it('names the main guide in some saying', () => {
    const { groups, main } = finder();
    const all = groups.flatMap((group) => group.sayings);
    expect(all.length).toBeGreaterThan(10);
    expect(all.map(({ guide }) => guide)).toContain(main);
  });

  it('puts the main guide first and loses none', () => {
    expect(guidesInOrder()[0]).toBe(mainGuide());
    expect(new Set(guidesInOrder())).toEqual(new Set(guides()));
    expect(mainGuide().id).toBe('door-locked');
  });
});
