/**
 * The JSON of `npm run note`: journeys in, readings out. The JSON Schemas in
 * `public/schema` are made from these.
 */
import { z } from 'zod';
import type { AnswerId, GuideId, NodeId } from '../guide/types.ts';
import { dayOf, latestDay } from '../note/day.ts';
import type { Note, CodeEdit, Reading, ReadProblem } from '../note/types.ts';

const count = z.int().min(0);
/** A note code in its canonical spelling. */
export const code = z.string().regex(/^[0-9A-HJKMNP-TV-Z]{4}(?:-[0-9A-HJKMNP-TV-Z]{4}){3,14}$/);

/** A journey as people and programs write it. */
export const journeySchema = z
  .strictObject({
    guide: z.string().describe('Name of the guide, as in its address'),
    answers: z
      .array(z.tuple([z.string(), z.string()]))
      .describe('Pairs of node and answer, in the order given'),
    error: z.string().default('').describe("The display's text, exactly as shown"),
    details: z
      .record(z.string(), z.string())
      .default({})
      .describe('Optional details: detail to answer'),
    made: z.iso.date().optional().describe('Day the note was made (UTC); today if left out'),
    release: z.int().min(1).optional().describe('Release of the guides; the newest if left out'),
  })
  .meta({ title: 'Journey' });

export type JourneyJson = z.output<typeof journeySchema>;

const noteSchema = z.strictObject({
  guide: z.string(),
  answers: z.array(z.tuple([z.string(), z.string()])),
  error: z.string(),
  details: z.record(z.string(), z.string()),
  made: z.iso
    .date()
    .describe('The latest possible day; a code tells days apart only within 32 days'),
  release: z.int().min(1),
});

export const placeSchema = z.strictObject({
  at: count.describe('Place in the code counted from 0 without hyphens; for added, in the input'),
  was: z.string().describe('What was given; empty for dropped, ? for unreadable'),
  is: z.string().describe('What it was changed to; empty for added'),
  how: z.enum(['wrong', 'swapped', 'dropped', 'added', 'unreadable']),
}) satisfies z.ZodType<CodeEdit>;

/** One shape for each problem code. */
export const problemSchema = z.discriminatedUnion('code', [
  z.strictObject({ code: z.literal('empty') }),
  z.strictObject({ code: z.literal('too-long'), given: count, most: count }),
  z.strictObject({ code: z.literal('too-short'), given: count, least: count }),
  z.strictObject({
    code: z.literal('wrong-length'),
    given: count,
    nearest: z.array(count).readonly(),
  }),
  z.strictObject({ code: z.literal('short-group'), group: count, given: count }),
  z.strictObject({ code: z.literal('bad-symbol'), at: count, nth: count, character: z.string() }),
  z.strictObject({ code: z.literal('bad-word'), at: count, nth: count, word: z.string() }),
  z.strictObject({ code: z.literal('too-many-unreadable'), given: count, most: count }),
  z.strictObject({ code: z.literal('too-damaged'), given: count }),
  z.strictObject({ code: z.literal('ambiguous'), count }),
  z.strictObject({
    code: z.literal('unknown-release'),
    release: z.int().min(1),
    known: z.array(z.int().min(1)).readonly(),
  }),
  z.strictObject({
    code: z.literal('impossible'),
    field: z.enum(['release', 'guide', 'journey', 'details', 'error', 'length']),
  }),
]) satisfies z.ZodType<ReadProblem>;
/** What `read` prints, one object a line. */
export const readingSchema = z
  .discriminatedUnion('kind', [
    z.strictObject({ kind: z.literal('exact'), code, note: noteSchema }),
    z.strictObject({
      kind: z.literal('repaired'),
      code,
      note: noteSchema,
      places: z.array(placeSchema).readonly(),
      digits: z.literal(true).optional().describe('Given as digits, which the places count'),
      spare: count.describe('Check symbols left over to confirm the repair'),
    }),
    z.strictObject({ kind: z.literal('refused'), problem: problemSchema }),
  ])
  .meta({ title: 'Reading' });

export type NoteJson = z.output<typeof noteSchema>;
export type ReadingJson = z.output<typeof readingSchema>;

/** A note for people and programs; `today` settles which of the possible days it was made. */
export function noteToJson(
  { release, guide, journey, day, details, error }: Note,
  today: Date,
): NoteJson {
  const answers = journey.map(({ at, answer }): [string, string] => [at, answer]);
  const made = latestDay(day, today);
  return { guide, answers, error, details: { ...details }, made, release };
}

/** A note of the JSON somebody wrote; the names in it are checked only when it is written. */
export function noteFromJson(json: JourneyJson, newest: number, today: Date): Note {
  return {
    release: json.release ?? newest,
    guide: json.guide as GuideId,
    journey: json.answers.map(([at, answer]) => ({
      at: at as NodeId,
      answer: answer as AnswerId,
    })),
    day: dayOf(json.made === undefined ? today : new Date(json.made)),
    details: json.details,
    error: json.error,
  };
}

/** A reading with its note as JSON. */
export function readingToJson(reading: Reading, today: Date): ReadingJson {
  return reading.kind === 'refused'
    ? reading
    : { ...reading, note: noteToJson(reading.note, today) };
}
