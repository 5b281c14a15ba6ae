// Good inputs to begin with.
import { loadBooks } from '../../../src/cli/books.ts';
import { bookGuide } from '../../../src/note/library.ts';
import { sampleJourneys } from '../../../src/note/sample.ts';
import { writeCode } from '../../../src/note/write.ts';

/** @throws Error where something that must hold does not. */
export function hold(condition: boolean, what: string): asserts condition {
  if (!condition) throw new Error(what);
}

const books = loadBooks(new Date(0));
hold(books.ok, 'the books load');
export const { library, newest } = books.value;
/** Codes of the newest release. */
export const codesOf = (id: string): string[] => {
  const book = library.get(newest);
  const guide = book && bookGuide(book, id);
  hold(guide !== undefined, `a book of ${id}`);
  return [...sampleJourneys(guide, 20, 1)].map((journey, i) => {
    const error = ['', 'F9', 'E-1 HOT'][i % 3] ?? '';
    const note = { release: newest, guide: guide.id, journey, day: i, details: {}, error };
    const code = writeCode(note, library);
    hold(code.ok, 'a code is written');
    return code.value;
  });
};

export const SPELLED =
  'Four Golf Kilo Five Eight Four Juliett Seven Kilo Charlie Victor Whiskey Foxtrot';
