import { describe, expect, it } from 'vitest';
import { makeCodebooks } from '../../../src/note/codebook.ts';
import { closureOf, partOfRelease } from '../../../src/note/part-of-release.ts';
import type { Release } from '../../../src/note/release.ts';
import { writeCode } from '../../../src/note/write.ts';
import { guideOf, plainNote, smallRelease, workingRelease } from './codebooks.ts';

/** The small release with one more guide, which leads into another. */
function handingOver(): Release {
  const release = smallRelease(1);
  const leading = {
    id: 'leading',
    start: 'ask',
    nodes: [{ id: 'ask', kind: 'question', answers: [['over', 'small/second']] }],
    exits: [],
  } as const;
  return { ...release, guides: [...release.guides, leading] };
}

describe('the part of a release for one guide', () => {
  it('has the guide and those it hands over to, and places for all others', () => {
    const release = handingOver();
    expect(closureOf(release, 'leading')).toEqual(['leading', 'small']);
    expect(closureOf(release, 'tiny')).toEqual(['tiny']);
    const part = partOfRelease(release, 'leading');
    expect(part.guides.map(({ id }) => id)).toEqual(['small', 'tiny', 'leading']);
    expect(part.guides[0]).toEqual(release.guides[0]);
    expect(part.guides[1]?.nodes).toHaveLength(1);
  });

  it('has nothing that only staff see', () => {
    const whole = workingRelease();
    expect(JSON.stringify(whole)).toContain('"flag"');
    for (const { id } of whole.guides)
      expect(JSON.stringify(partOfRelease(whole, id))).not.toMatch(/"(marks|flag|heat)":/);
  });

  it('writes the codes that the whole release writes', () => {
    const whole = {
      ...workingRelease(),
      guides: [...workingRelease().guides, ...smallRelease(1).guides],
    };
    const codebooks = makeCodebooks([whole]);
    const guide = guideOf(codebooks);
    const part = makeCodebooks([partOfRelease(whole, guide.id)]);
    const { journeys } = guide.first;
    for (const rank of [1n, journeys / 3n, journeys / 2n, journeys - 1n]) {
      const note = plainNote(rank, 5, codebooks);
      const code = writeCode(note, codebooks);
      expect(code.ok).toBe(true);
      expect(writeCode(note, part)).toEqual(code);
    }
    const small = makeCodebooks([partOfRelease(smallRelease(1), 'tiny')]);
    expect(small.get(1)?.guides).toHaveLength(2);
  });
});
