/** The JSON of a job, in which calls are handed over; the schema in `public/schema` is made from this. */
import { z } from 'zod';
import { urgencies } from '../guide/types.ts';
import { callerFields, callerMost } from '../visit/job.ts';
import { code } from './note-json.ts';

const minute = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d$/);
const pair = z.tuple([z.string(), z.string()]);
const caller = Object.fromEntries(
  callerFields.map((field) => {
    const text = z
      .string()
      .min(1)
      .max(2 * callerMost[field]);
    // The pattern keeps a value on one line; a remark has lines.
    return [field, (field === 'remark' ? text : text.regex(/^[^\r\n]*$/)).optional()];
  }),
);

/** What a call ends in, the most urgent things first. */
export const jobSchema = z
  .strictObject({
    version: z.literal(2),
    urgency: z
      .enum([...urgencies, 'open'])
      .describe('open where the guide was left before its end'),
    guide: z.string().describe('The complaint'),
    error: z.string().describe("The display's text, exactly as shown"),
    flags: z.array(z.string()).describe('Safety flags'),
    called: minute.optional().describe("Time of the call by the firm's clock, to the minute"),
    answered: minute.optional().describe('Time of the last answer, in the same form'),
    clerk: z.string().min(1).max(160).optional().describe('Who of the staff took the call'),
    caller: z.strictObject(caller).describe('Personal data. It is in no code and no address'),
    parts: z
      .array(z.strictObject({ part: z.string(), chance: z.number().min(0).max(1) }))
      .describe('What to load and the chance that the visit needs each; none in an emergency'),
    code: code.optional().describe('Absent where no answer was given yet'),
    also: z.array(code).min(1).optional().describe('Codes of other problems, for the same visit'),
    codeReadBack: z
      .boolean()
      .optional()
      .describe('The caller read the code back without a difference'),
    link: z.url().optional().describe('Where the code opens'),
    release: z.int().min(1).describe('Release of the guides the names belong to'),
    made: z.iso.date().describe('Day the note was made'),
    outcome: z
      .strictObject({
        kind: z.enum(['stop', 'finish', 'open']),
        at: z.string().describe('Node the journey stands at'),
        because: pair.describe('Node and answer that led there'),
      })
      .optional(),
    breakerStaysOff: z.boolean().optional(),
    answers: z.array(pair).describe('Pairs of node and answer, in the order given'),
    details: z.record(z.string(), z.string()),
    cautions: z
      .strictObject({ read: z.array(z.string()), unread: z.array(z.string()) })
      .optional()
      .describe('Nodes whose cautions were read out in the call, and those whose were not'),
  })
  .meta({ title: 'Job' });
