// Good inputs to begin with.
import { releases } from '../../../src/content/load.ts';
import { codebookGuide, makeCodebooks } from '../../../src/note/codebook.ts';
import { sampleJourneys } from '../../../src/note/sample.ts';
import { writeCode } from '../../../src/note/write.ts';

/** @throws Error where something that must hold does not. */
export function hold(condition: boolean, what: string): asserts condition {
  if (!condition) throw new Error(what);
}

export const codebooks = makeCodebooks(releases());
export const newest = releases().length;
/** Codes of the newest release. */
export const codesOf = (id: string): string[] => {
  const codebook = codebooks.get(newest);
  const guide = codebook && codebookGuide(codebook, id);
  hold(guide !== undefined, `a book of ${id}`);
  return [...sampleJourneys(guide, 20, 1)].map((journey, i) => {
    const error = ['', 'F9', 'E-1 HOT'][i % 3] ?? '';
    const note = { release: newest, guide: guide.id, journey, day: i, details: {}, error };
    const code = writeCode(note, codebooks);
    hold(code.ok, 'a code is written');
    return code.value;
  });
};

export const SPELLED =
  'Four Golf Kilo Five Eight Four Juliett Seven Kilo Charlie Victor Whiskey Foxtrot';
