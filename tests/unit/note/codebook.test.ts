/** Codebooks say of their nodes what the guides said that they were frozen of. */
import { describe, expect, it } from 'vitest';
import { guides } from '../../../src/content/load.ts';
import type { Answer, Graph, GraphNode } from '../../../src/guide/types.ts';
import { codebookGuide, makeCodebooks } from '../../../src/note/codebook.ts';
import { codebookOf, working, workingRelease } from './codebooks.ts';

/** Facts are the proof's, `confirm` and `drawing` the page's: none of them is frozen. */
const shown = (answer: Answer) => {
  const { sets: _sets, clears: _clears, confirm: _confirm, drawing: _drawing, ...frozen } = answer;
  return frozen;
};

const told = ({ nodes, exits, flags, start }: Graph) => ({
  start,
  exits: exits.map(shown),
  flags,
  nodes: [...nodes.values()]
    .map(
      ({ id, guide, page, track, sentences, kind, urgency, heat, flag, answers }: GraphNode) => ({
        ...{ id, guide, page, track, sentences, kind, urgency, heat, flag },
        answers: answers.map(shown),
      }),
    )
    .toSorted((a, b) => a.id.localeCompare(b.id)),
});

describe('a codebook of the working guides', () => {
  it('says what they say', () => {
    const codebook = codebookOf(working);
    expect(guides().length).toBeGreaterThan(5);
    for (const guide of guides()) {
      const frozen = codebookGuide(codebook, guide.id);
      expect(frozen && told(frozen), guide.id).toEqual(told(guide));
    }
  });

  it('freezes the track of every question and step', () => {
    const open = workingRelease().guides.flatMap(({ nodes }) =>
      nodes.filter(({ answers }) => answers),
    );
    expect(open.length).toBeGreaterThan(150);
    expect(open.filter(({ track }) => track === undefined)).toEqual([]);
  });

  it('shows no flag of a journey where it knows no order of them', () => {
    const plain = codebookOf(makeCodebooks([workingRelease()]));
    expect(plain.guides.map(({ flags }) => flags)).toEqual(plain.guides.map(() => []));
  });
});
