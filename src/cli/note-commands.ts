/** What `npm run note` does with each line, apart from files and streams. */
import { defined } from '../defined.ts';
import { codebookGuide } from '../note/codebook.ts';
import type { CodebookGuide } from '../note/codebook.ts';
import { dayOf, latestDay } from '../note/day.ts';
import { sampleJourneys } from '../note/sample.ts';
import { writeCode } from '../note/write.ts';
import type { CurrentCodebooks } from '../content/codebooks.ts';
import { jobText, jobLabels } from '../app/shared/job-text.ts';
import type { Words } from '../app/shared/words.ts';
import { hashOf } from '../address/grammar.ts';
import { exactOf, handOvers, joined, readPasted } from '../visit/hand-over.ts';
import type { HandOver, Labels } from '../visit/hand-over.ts';
import { makeJob } from '../visit/job.ts';
import { readVisit } from '../visit/read-visit.ts';
import type { Figures } from '../visit/read-visit.ts';
import { journeySchema, noteFromJson, readingToJson } from './note-json.ts';

/** A line to print, and whether what it answers was usable. */
export interface Line {
  readonly text: string;
  readonly good: boolean;
}

/** Read one code: a JSON object as in `public/schema/reading.json`. */
export function readLine(
  input: string,
  { codebooks }: CurrentCodebooks,
  today: Date,
  labels: Labels,
): Line {
  const { reading } = readPasted(input, codebooks, labels);
  return {
    text: JSON.stringify(readingToJson(reading, today)),
    // A repaired code is a proposal that nobody has confirmed, as in a round.
    good: reading.kind === 'exact',
  };
}

/** What makes jobs at a terminal. */
export interface JobWish {
  readonly words: Words;
  readonly figures: Figures;
  /** Where the site is. */
  readonly site: string;
  readonly json: boolean;
}

/** The jobs that a text hands over, or its one code's, written anew; codes that do not read as given in between. */
export function jobLines(
  input: string,
  { codebooks }: CurrentCodebooks,
  today: Date,
  { words, figures, site, json }: JobWish,
): readonly Line[] {
  const labels = jobLabels(words);
  const found = handOvers(input, labels);
  const given: readonly HandOver[] = found.length > 0 ? found : [{ code: input, caller: {} }];
  return given.map(({ code: text, caller, called, answered, clerk, error }) => {
    const { reading, also = [] } = readPasted(text, codebooks, labels);
    if (reading.kind !== 'exact')
      return { text: JSON.stringify(readingToJson(reading, today)), good: false };
    const { code, note } = reading;
    const view = readVisit(note, codebooks, figures);
    const more = exactOf(also, codebooks);
    const others = more.map((one) => readVisit(one.note, codebooks, figures));
    const codes = { code, also: more.map((one) => one.code) };
    const all = joined([code, ...codes.also]);
    const link = new URL(`preview/${hashOf({ c: all })}`, site.replace(/\/?$/, '/')).href;
    const made = latestDay(note.day, today);
    const told = defined({ called, answered, clerk, error });
    const job = makeJob(view, { ...codes, ...told, link, made, caller, others });
    if (!job) return { text: code, good: true };
    const said = json ? JSON.stringify(job) : `${jobText(words, view, job, others)}\n`;
    return { text: said, good: true };
  });
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
  if (made !== undefined && latestDay(dayOf(new Date(made)), today) !== made)
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
