import { describe, expect, it } from 'vitest';
import { finder, guides, textFile } from '../../../src/content/load.ts';
import { guidesInOrder, mainGuide, sayings } from '../../../src/site/finder.ts';

const words = textFile('en', 'guides') as Record<
  'groups' | 'sayings' | 'names',
  Record<string, string>
>;

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

  it('has words for each group, saying and guide it names, and no more', () => {
    const { groups, main } = finder();
    const all = groups.flatMap((group) => group.sayings);
    const sorted = (names: Iterable<string>) => [...new Set(names)].toSorted();
    expect(all.length).toBeGreaterThan(10);
    expect(sorted(Object.keys(words.groups))).toEqual(sorted(groups.map(({ id }) => id)));
    expect(sorted(Object.keys(words.sayings))).toEqual(sorted(all.map(({ id }) => id)));
    expect(sorted(Object.keys(words.names))).toEqual(sorted(all.map(({ guide }) => guide)));
    expect(all.map(({ guide }) => guide)).toContain(main);
  });

  it('puts the main guide first and loses none', () => {
    expect(guidesInOrder()[0]).toBe(mainGuide());
    expect(new Set(guidesInOrder())).toEqual(new Set(guides()));
    expect(mainGuide().id).toBe('door-locked');
  });
});
