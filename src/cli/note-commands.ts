/** What `npm run note` does with each line, apart from files and streams. */
import { codebookGuide } from '../note/codebook.ts';
import type { CodebookGuide } from '../note/codebook.ts';
import { dayOf, madeOn } from '../note/day.ts';
import { readCode } from '../note/read.ts';
import { sampleJourneys } from '../note/sample.ts';
import { writeCode } from '../note/write.ts';
import type { CurrentCodebooks } from '../content/codebooks.ts';
import { journeySchema, noteFromJson, readingToJson } from './note-json.ts';

/** A line to print, and whether what it answers was usable. */
export interface Line {
  readonly text: string;
  readonly good: boolean;
}

/** Read one code: a JSON object as in `public/schema/reading.json`. */
export function readLine(input: string, { codebooks }: CurrentCodebooks, today: Date): Line {
  const reading = readCode(input, codebooks);
  return {
    text: JSON.stringify(readingToJson(reading, today)),
    // A repaired code is a proposal that nobody has confirmed, as in a round.
    good: reading.kind === 'exact',
  };
}

/**
 * Write the code of one JSON journey, or say as JSON what is wrong with it.
 * @param line its number in the input, from 1
 */
export function writeLine(
  input: string,
  line: number,
  current: CurrentCodebooks,
  today: Date,
): Line {
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
  // The schema library passes over this key without a word.
  if (/"__proto__"\s*:/.test(input))
    return bad({ code: 'bad-shape', issues: [{ path: '__proto__', code: 'unrecognized_keys' }] });
  const { made } = journey.data;
  // A code tells days apart only within 32 days: any other would be read as one of those.
  if (made !== undefined && +madeOn(dayOf(new Date(made)), today).latest !== +new Date(made))
    return bad({ code: 'bad-day', made });
  const code = writeCode(noteFromJson(journey.data, current.newest, today), current.codebooks);
  return code.ok ? { text: code.value, good: true } : bad(code.error);
}

/** The guide of the newest release by its name. */
export function newestGuide(
  name: string,
  { codebooks, newest }: CurrentCodebooks,
): CodebookGuide | undefined {
  const codebook = codebooks.get(newest);
  return codebook && codebookGuide(codebook, name);
}

/** JSON journeys drawn from all of a guide alike, as `write` takes them. */
export function* sampleLines(guide: CodebookGuide, size: number, seed: number): Generator<string> {
  for (const journey of sampleJourneys(guide, size, seed)) {
    const answers = journey.map(({ at, answer }) => [at, answer]);
    yield JSON.stringify({ guide: guide.id, answers });
  }
}
