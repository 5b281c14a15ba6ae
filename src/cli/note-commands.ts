/** What `npm run note` does with each line, apart from files and streams. */
import { bookGuide } from '../note/library.ts';
import type { BookGuide } from '../note/library.ts';
import { readCode } from '../note/read.ts';
import { sampleJourneys } from '../note/sample.ts';
import { writeCode } from '../note/write.ts';
import type { Books } from '../content/books.ts';
import { journeySchema, noteFromJson, readingToJson } from './note-json.ts';

/** A line to print, and whether what it answers was usable. */
export interface Line {
  readonly text: string;
  readonly good: boolean;
}

/** Read one code: a JSON object as in `public/schema/reading.json`. */
export function readLine(input: string, { library }: Books, today: Date): Line {
  const reading = readCode(input, library);
  return {
    text: JSON.stringify(readingToJson(reading, today)),
    good: reading.kind !== 'refused',
  };
}

/**
 * Write the code of one JSON journey, or say as JSON what is wrong with it.
 * @param line its number in the input, from 1
 */
export function writeLine(input: string, line: number, books: Books, today: Date): Line {
  const bad = (problem: object): Line => ({ text: JSON.stringify({ line, problem }), good: false });
  let value: unknown;
  try {
    value = JSON.parse(input);
  } catch {
    return bad({ code: 'bad-json' });
  }
  const journey = journeySchema.safeParse(value);
  if (!journey.success) {
    const issues = journey.error.issues.map(({ path, code }) => ({ path: path.join('.'), code }));
    return bad({ code: 'bad-shape', issues });
  }
  const code = writeCode(noteFromJson(journey.data, books.newest, today), books.library);
  return code.ok ? { text: code.value, good: true } : bad(code.error);
}

/** The guide of the newest release by its name. */
export function newestGuide(name: string, { library, newest }: Books): BookGuide | undefined {
  const book = library.get(newest);
  return book && bookGuide(book, name);
}

/** JSON journeys drawn from all of a guide alike, as `write` takes them. */
export function* sampleLines(guide: BookGuide, size: number, seed: number): Generator<string> {
  for (const journey of sampleJourneys(guide, size, seed)) {
    const answers = journey.map(({ at, answer }) => [at, answer]);
    yield JSON.stringify({ guide: guide.id, answers });
  }
}
